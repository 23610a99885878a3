import { describe, expect, test } from "vitest";
import type { PlateResult } from "../../../shared/model/result.ts";
import { evaluateText } from "../../kit/evaluate.ts";
import { checkClose } from "./close.ts";

interface Parts {
  readonly bench?: readonly string[];
  readonly plate?: readonly string[];
  readonly session?: readonly string[];
  readonly columns?: string;
  readonly rows?: readonly string[];
}

/** The result of one plate check. */
function checked({ bench, plate, session, columns, rows }: Parts): PlateResult {
  const { plates } = evaluateText(
    [
      "headnote 1",
      "bench b",
      ...(bench ?? ["shows flow", "repeat 0.5 %"]),
      "plate p",
      ...(plate ?? ["flow 250 cfm at 28 inH2O", "uncertainty 0.6 %"]),
      "session 2026-11-20",
      "bench b",
      ...(session ?? ["leak none", "target 28 inH2O"]),
      "plate-check p",
      columns ?? "depression[inH2O] flow[cfm]",
      ...(rows ?? ["28.0 250.0"]),
    ].join("\n"),
  );
  const [only] = plates;
  if (only === undefined) throw new RangeError("no plate check");
  return only;
}

/** Too many digits to matter: what is written adds nothing to the uncertainty. */
const EXACT = "28.000000";

describe("En of the NIST example (Dataplot reference manual, EN: prints 0.393, -0.262, -0.131, 0.000)", () => {
  test.each([
    ["1006.0000", 0.393],
    ["996.0000", -0.262],
    ["998.0000", -0.131],
    ["1000.0000", 0],
  ])("%s", (flow, printed) => {
    const { comparison } = checked({
      bench: ["shows flow", "repeat 0.434613 %"],
      plate: ["flow 1000 cfm at 28 inH2O", "uncertainty 1.255694 %"],
      rows: [`${EXACT} ${flow}`],
    });
    // The example gives the laboratory's uncertainty of itself, here it is that of its reading: 0.6 % of a part of En.
    expect(Math.abs((comparison?.en ?? Number.NaN) - printed)).toBeLessThan(1.5e-3);
  });
});

describe("the mean of the readings", () => {
  test("is quoted at the certificate's depression: 25 to 28 inH2O is a factor of 1.0583005", () => {
    const { comparison } = checked({ rows: ["25.0 240.0", "25.0 242.0"] });
    checkClose(comparison?.difference, (241 * 1.0583005) / 250 - 1, 1e-5);
    expect(comparison?.readings).toBe(2);
  });

  test("is quoted in the certificate's air: denser air passes less volume (handbook 4.4)", () => {
    // Dry air of 20 degC and 101325 Pa, 1.2045573 kg/m3 by CIPM-2007, to the standard atmosphere's 15 degC, 1.2255213.
    const session = ["leak none", "target 28 inH2O", "air 20 degC 101325 Pa 0 %RH", "reference din-1343"];
    const plate = ["flow 250 cfm at 28 inH2O in isa", "uncertainty 0.6 %"];
    const { comparison } = checked({ session, plate });
    checkClose(comparison?.difference, Math.sqrt(1.2045573 / 1.2255213) - 1, 1e-6);
  });

  test("is as the air of the day has it where the certificate names no air, whatever the session refers to", () => {
    const session = ["leak none", "target 28 inH2O", "air 20 degC 101325 Pa 0 %RH", "reference din-1343"];
    expect(checked({ session }).comparison?.difference).toBeCloseTo(0, 12);
  });

  test("goes through the bench's display, and the leak is taken off as from a row", () => {
    const bench = ["shows percent", "range low 300 cfm at 28 inH2O", "repeat 0.5 %"];
    const session = ["leak 5 cfm at 28 inH2O", "target 28 inH2O"];
    const columns = "depression[inH2O] reading[%]";
    const { comparison } = checked({ bench, session, columns, rows: ["28.0 85.0"] });
    expect(comparison?.difference).toBeCloseTo(0, 12);
  });

  test("leaves voids out", () => {
    const { comparison } = checked({ rows: ["28.0 250.0", '28.0 300.0 void "plate not seated"'] });
    expect([comparison?.readings, comparison?.difference]).toEqual([1, expect.closeTo(0, 12)]);
  });
});

describe("the uncertainty of the difference", () => {
  test("is that of plate, scale and readings together (JCGM 100:2008, 5.1.2)", () => {
    const { comparison } = checked({
      bench: ["shows flow", "repeat 0.4 %", "uncertainty 1.2 %"],
      rows: [`${EXACT} 250.000000`, `${EXACT} 250.000000`, `${EXACT} 250.000000`, `${EXACT} 250.000000`],
    });
    checkClose(comparison?.uncertainty, Math.hypot(0.006, 0.012, (2 * 0.004) / Math.sqrt(4)), 1e-6);
  });

  test("grows with a leak, of which nobody knows how much stays with the plate", () => {
    const { comparison } = checked({
      session: ["leak 10.000000 cfm at 28 inH2O", "target 28 inH2O"],
      rows: [`${EXACT} 260.000000`],
    });
    expect(comparison?.difference).toBeCloseTo(0, 12);
    checkClose(comparison?.uncertainty, 2 * Math.hypot(0.003, 0.005, 10 / 260 / Math.sqrt(3)), 1e-6);
  });

  test("is not known where the plate does not state its own: there is no judgement then", () => {
    const { comparison } = checked({ plate: ["flow 250 cfm at 28 inH2O"] });
    expect(comparison).toEqual({
      certified: expect.any(Number),
      flow: expect.any(Number),
      readings: 1,
      difference: 0,
    });
  });
});

describe("there is nothing to compare", () => {
  test.each([
    ["without a certified flow", { plate: ["diameter 2.000 in"] }],
    ["without a reading", { rows: [] }],
    ["without a reading that counts", { rows: ['28.0 250.0 void "no"', "0.0 250.0", "28.0 -"] }],
    ["without a column of the display", { columns: "depression[inH2O] reading[%]" }],
    ["with a certified flow of nothing", { plate: ["flow 0 cfm at 28 inH2O", "uncertainty 1 %"] }],
    ["with an air of the certificate that is none", { plate: ["flow 250 cfm at 28 inH2O in 900 degC 1 Pa"] }],
  ] satisfies (readonly [string, Parts])[])("%s", (_, parts) => {
    expect(checked(parts).comparison).toBeUndefined();
  });

  test("where the plate is not found", () => {
    const { plates } = evaluateText("headnote 1\nsession 2026-11-20\nplate-check nowhere\n");
    expect(plates).toEqual([expect.objectContaining({ rows: [] })]);
    expect(plates[0]?.plate).toBeUndefined();
    expect(plates[0]?.comparison).toBeUndefined();
  });
});
