import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flowChain, leakNumber } from "../../../shared/calc/flow-chain.ts";
import type { Flow } from "../../../shared/model/result.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { type Parts, smallRecord } from "../sample-record.ts";
import { checkClose } from "./close.ts";

const CFM = 4.719474432e-4; // m3/s, NIST SP 811 B.8
const INH2O = 249.08891; // Pa, conventional, NIST SP 811 B.8

/** The flow of a record's only row, in cfm. */
function flowOf(parts: Parts): Partial<Flow> {
  const flow = evaluateRun(smallRecord(parts)).rows[0]?.flow;
  if (flow === undefined) return {};
  const { measured, leak, port, corrected } = flow;
  return { measured: measured / CFM, leak: leak / CFM, port: port / CFM, corrected: corrected / CFM };
}

function checkCorrected(parts: Parts, expected: number, relative = 1e-12): void {
  checkClose(flowOf(parts).corrected, expected, relative);
}

function checkNothing(parts: Parts): void {
  expect(evaluateRun(smallRecord(parts)).rows[0]?.flow).toBeUndefined();
}

const TARGET_28 = ["leak none", "target 28 inH2O"];

describe("a display of flow", () => {
  test.each([
    ["10", 1.6733201],
    ["25", 1.0583005],
    ["27.8", 1.0035907],
    ["30", 0.9660918],
  ])("at %s inH2O is quoted at 28 by the square root: times %d (computed apart)", (depression, factor) => {
    checkCorrected({ session: TARGET_28, rows: [`0.1 ${depression} 100`] }, 100 * factor, 1e-7);
  });

  test("is quoted at the quoted depression, not at the one that was held", () => {
    const session = ["leak none", "target 10 inH2O", "quote 28 inH2O"];
    checkCorrected({ session, rows: ["0.1 10 100"] }, 167.33201, 1e-7);
  });

  test("that is already scaled to a depression does not depend on the row's own", () => {
    const bench = ["shows flow at 28 inH2O"];
    for (const depression of ["10", "25", "28", "30"]) {
      checkCorrected({ bench, session: TARGET_28, rows: [`0.1 ${depression} 240`] }, 240);
    }
    checkClose(flowOf({ bench, session: TARGET_28, rows: ["0.1 7 240"] }).port, 120, 1e-12);
  });

  test("that is true for a bench air shows less of a thinner one than flows (arithmetic)", () => {
    // Both dry: density goes with pressure over temperature, real-gas terms to 3e-5 of it.
    const session = [...TARGET_28, "air 15 degC 90000 Pa 0 %RH"];
    const bench = ["shows flow in isa"];
    checkCorrected({ bench, session, rows: ["0.1 28 200"] }, 200 * Math.sqrt(101325 / 90000), 5e-5);
  });

  test("in a bench air is what it shows once it is put into that same air", () => {
    const session = [...TARGET_28, "air 31 degC 96 kPa 70 %RH", "reference sae-j607"];
    checkCorrected({ bench: ["shows flow in sae-j607"], session, rows: ["0.1 28 200"] }, 200);
  });

  test("in an air that is not known gives nothing, rather than a number for another air", () => {
    checkNothing({ bench: ["shows flow in nowhere"], rows: ["0.1 28 200"] });
    checkNothing({ bench: ["shows flow in 900 degC 101325 Pa"], rows: ["0.1 28 200"] });
  });
});

describe("another reference air (the chain driven with the densities themselves)", () => {
  /** Corrected flow in cfm of air that is `ratio` as dense as the reference. */
  function corrected(cfm: number, depression: number, ratio: number): number | undefined {
    const { setup } = evaluateRun(smallRecord({ session: [...TARGET_28, "reference isa"], rows: [] }));
    const density = ratio * (setup.reference?.value.state.density ?? Number.NaN);
    const input = { display: cfm * CFM, depression: depression * INH2O, range: undefined, leak: 0, density };
    const flow = flowChain(setup)?.through(input);
    return flow && flow / CFM;
  }

  test("300 cfm from 1.09 to 1.225 kg/m3 is 282.98698 (computed apart)", () => {
    checkClose(corrected(300, 28, 1.09 / 1.225), 282.98698, 2e-8);
  });

  test("240 cfm at 25 inH2O from 1.156747 to 1.225 kg/m3 is 246.81491 at 28 (computed apart)", () => {
    checkClose(corrected(240, 25, 1.156747 / 1.225), 246.81491, 3e-8);
  });
});

describe("a leak", () => {
  const leak = (line: string): Parts => ({
    session: ["target 28 inH2O", `leak ${line}`],
    rows: ["0.1 28 100"],
  });

  test.each([
    ["4.0 cfm at 10 inH2O", 6.6932802],
    ["4.0 cfm at 10 inH2O exponent 0.65", 7.8111092],
    ["4.0 cfm at 10 inH2O exponent 1", 11.2],
    ["4.0 cfm at 28 inH2O", 4],
  ])("of %s is %d cfm at 28 inH2O (ASTM E779 power law, computed apart)", (line, expected) => {
    const flow = flowOf(leak(line));
    checkClose(flow.leak, expected, 1e-8);
    checkClose(flow.port, 100 - expected, 1e-8);
    checkClose(flow.corrected, 100 - expected, 1e-8);
  });

  test("is taken off before flow goes to the quoted depression", () => {
    const parts = { ...leak("4.0 cfm at 10 inH2O"), rows: ["0.1 20 100"] };
    checkCorrected(parts, (100 - 4 * Math.SQRT2) * Math.sqrt(1.4), 1e-12);
  });

  test("on a scaled display was scaled too: what it shows is what it takes off", () => {
    const bench = ["shows flow at 28 inH2O"];
    checkCorrected({ ...leak("4.0 cfm at 10 inH2O"), bench }, 96);
    const exponent = { ...leak("4.0 cfm at 10 inH2O exponent 1"), bench };
    // 4 sqrt(10/28) at 10 inH2O, times 2.8 at 28
    checkCorrected(exponent, 100 - 4 * Math.sqrt(10 / 28) * 2.8);
  });

  test("on a display in a bench air is shown in that air as well", () => {
    const session = [
      "target 28 inH2O",
      "leak 4.0 cfm at 28 inH2O",
      "air 31 degC 96 kPa 70 %RH",
      "reference isa",
    ];
    checkCorrected({ bench: ["shows flow in isa"], session, rows: ["0.1 28 100"] }, 96);
  });

  test("at no depression takes nothing off that could be known, so that there is no result", () => {
    checkNothing(leak("4.0 cfm at 0 inH2O"));
  });

  test("that is none or not stated takes nothing off", () => {
    checkCorrected(leak("none"), 100);
    checkCorrected({ session: ["target 28 inH2O"], rows: ["0.1 28 100"] }, 100);
    expect(leakNumber(evaluateRun(smallRecord({ rows: [] })).setup)).toBe(0);
  });
});

describe("a display of percent", () => {
  const bench = ["shows percent", "range low 150 cfm at 28 inH2O", "range high 300 cfm at 28 inH2O"];
  const columns = "lift[in] depression[inH2O] range reading[%]";

  test("is that share of its range, and not scaled by depression", () => {
    const parts = { bench, columns, session: TARGET_28, rows: ["0.1 27 high 70"] };
    checkClose(flowOf(parts).measured, 210, 1e-12);
    checkCorrected(parts, 210 * Math.sqrt(28 / 27));
    checkCorrected({ ...parts, rows: ["0.1 28 low 70"] }, 105);
  });

  test("needs no range column with a single range, and gives nothing for a range that is not stated", () => {
    const single = ["shows percent", "range only 150 cfm at 28 inH2O"];
    checkCorrected(
      { bench: single, columns: "lift[in] depression[inH2O] reading[%]", rows: ["0.1 28 70"] },
      105,
    );
    checkNothing({ bench, columns, rows: ["0.1 28 middle 70"] });
    checkNothing({ bench, columns, rows: ["0.1 28 - 70"] });
  });

  test("has its leak written as a flow", () => {
    const session = ["target 28 inH2O", "leak 4.0 cfm at 10 inH2O"];
    checkCorrected({ bench, columns, session, rows: ["0.1 28 high 70"] }, 210 - 6.6932802, 1e-8);
  });
});

describe("a display of a signal", () => {
  const bench = ["shows signal", "signal[V] flow[cfm]", "2 100", "1 50", "3 180", "4 999 void"];
  const columns = "lift[in] depression[inH2O] signal[V]";
  const at = (signal: string): Parts => ({ bench, columns, rows: [`0.1 28 ${signal}`] });

  test.each([
    ["1", 50],
    ["1.5", 75],
    ["2.5", 140],
    ["3", 180],
  ])(
    "of %s V is %d cfm: straight between the points of its table, which may stand in any order",
    (signal, cfm) => {
      checkCorrected(at(signal), cfm);
    },
  );

  test("outside its table gives nothing", () => {
    checkNothing(at("0.99"));
    checkNothing(at("3.01"));
  });

  test("has its leak as a flow of the room's own air, also where the table is for another", () => {
    const inIsa = ["shows signal in isa", "signal[V] flow[cfm]", "1 50", "3 150"];
    const session = ["target 28 inH2O", "leak 4.0 cfm at 28 inH2O", "air 31 degC 96 kPa 70 %RH"];
    const flow = flowOf({ bench: inIsa, columns, session, rows: ["0.1 28 2"] });
    checkClose(flow.leak, 4, 1e-12);
    expect(flow.measured).toBeGreaterThan(100);
  });
});

describe("no flow is computed", () => {
  test.each(["0.1 0 100", "0.1 -5 100", "0.1 - 100", "0.1 28 -"])("for the row %s", (row) => {
    checkNothing({ rows: [row] });
  });

  test("without a bench, or without what its display shows", () => {
    const text = smallRecord({ rows: ["0.1 28 100"] });
    expect(evaluateRun(text.replaceAll("bench b\nport p", "port p")).rows[0]?.flow).toBeUndefined();
    checkNothing({ bench: ["repeat 1 %"], rows: ["0.1 28 100"] });
  });
});

test("a reading that is as high again gives as much flow again, whatever the depressions", () => {
  const number = fc.integer({ min: 1, max: 400 });
  fc.assert(
    fc.property(number, number, number, (reading, depression, quote) => {
      const session = ["leak none", "target 28 inH2O", `quote ${quote} inH2O`];
      const flow = (display: number) => flowOf({ session, rows: [`0.1 ${depression} ${display}`] });
      checkClose(flow(2 * reading).corrected, 2 * (flow(reading).corrected ?? Number.NaN), 1e-12);
      checkClose(flow(reading).corrected, reading * Math.sqrt(quote / depression), 1e-12);
    }),
  );
});
