import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { summary } from "../../../shared/calc/summary.ts";
import type { RowResult, RunResult } from "../../../shared/model/result.ts";
import { fromSI } from "../../../shared/quantity/unit.ts";
import { unit } from "../../../shared/render/display-units.ts";
import { evaluateRun, evaluateText } from "../../kit/evaluate.ts";
import { AS_CAST, type Parts, SHORT_SIDE, smallRecord } from "../sample-record.ts";
import { checkClose } from "./close.ts";
import { seededNormals } from "./seeded-normals.ts";

const CFM = 4.719474432e-4; // m3/s, NIST SP 811 B.8
const INCH = 0.0254;
const INH2O = 249.08891; // Pa, conventional, NIST SP 811 B.8

function run(parts: Parts): RunResult {
  return evaluateRun(smallRecord(parts));
}

/** Corrected flows in cfm. */
function flows({ rows }: RunResult): readonly (number | undefined)[] {
  return rows.map(({ flow }) => flow && flow.corrected / CFM);
}

/** Mean flows of the rising stations in cfm, to 9 digits. */
function stationFlows({ rising }: RunResult): readonly number[] {
  return rising.map(({ flow }) => Number((flow / CFM).toPrecision(9)));
}

describe("the sample record (computed apart)", () => {
  test("has its corrected flows, leak taken off and at 28 inH2O", () => {
    const expected = [56.6, 123.8, 185.93554189805, 228, 224.3, 223.1];
    flows(evaluateRun(AS_CAST)).forEach((flow, index) => {
      checkClose(flow, expected[index] ?? Number.NaN, 1e-12);
    });
  });

  test("has the uncertainties of JCGM 100 in each row: 0.35 %, last digits, a thousandth of an inch of lift", () => {
    const expected = [
      1.40484955662, 1.56435241991, 1.6805366145, 1.66048090206, 1.59016341849, 1.58111110375,
    ];
    evaluateRun(AS_CAST).rows.forEach(({ flow, uncertainty }, index) => {
      const absolute = ((flow?.corrected ?? 0) * (uncertainty ?? 0)) / CFM;
      checkClose(absolute, expected[index] ?? Number.NaN, 1e-8);
    });
  });

  test("computes a void row and uses it nowhere", () => {
    const { rows, rising } = evaluateRun(SHORT_SIDE);
    expect(rows[2]?.flow).toBeDefined();
    expect(rows[2]?.branch).toBeUndefined();
    expect(rising.map((station) => station.rows.length)).toEqual([1, 1, 1]);
  });
});

describe("the rows that take part in means", () => {
  test("are averaged by lift and branch", () => {
    const result = run({
      rows: ["0.1 28 50", "0.2 28 100", "0.2 28 102", "0.3 28 140", "0.2 28 99", "0.1 28 49", "0.1 28 51"],
    });
    expect(stationFlows(result)).toEqual([50, 101, 140]);
    expect(result.falling.map(({ flow }) => flow / CFM)).toEqual([
      expect.closeTo(50, 9),
      expect.closeTo(99, 9),
    ]);
  });

  test("are also those off their target, quoted", () => {
    const { rising } = run({ rows: ["0.1 28 50", "0.2 25 100"] });
    checkClose(rising[1]?.flow, 100 * Math.sqrt(28 / 25) * CFM, 1e-12);
  });

  test("are not those that slipped a unit, which do not bend their neighbours either", () => {
    const result = run({ port: [], rows: ["0.1 28 50", "0.2 28 1000", "0.3 28 150", "0.4 28 190"] });
    expect(result.rows[1]?.slip).toMatchObject({ column: "flow", near: 10 });
    expect(stationFlows(result)).toEqual([50, 150, 190]);
    checkClose(result.rising[0]?.slope, (100 * CFM) / (0.2 * INCH), 1e-12);
  });

  test("are not those of a slipped lift, which is nobody's row before", () => {
    const result = run({
      port: [],
      rows: ["0.1 28 50", "0.2 28 100", "3.0 28 145", "0.4 28 190", "0.5 28 220"],
    });
    expect(result.rows[2]?.slip).toMatchObject({ column: "lift", near: 10 });
    expect(result.rows.map(({ branch }) => branch)).toEqual([
      "rising",
      "rising",
      undefined,
      "rising",
      "rising",
    ]);
    expect(result.falling).toEqual([]);
  });

  test("are not those that the geometry cannot pass by more than their uncertainty", () => {
    // 0.1 in of a 2 in valve has a curtain of 0.62832 in2; 146 cfm/in2 is what a perfect one passes (2.9 % less here).
    const result = run({ rows: ["0.1 28 100", "0.2 28 110"] });
    expect(result.rows[0]?.impossible).toMatchObject({ area: "curtain" });
    checkClose(result.rows[0]?.impossible?.geometric, Math.PI * 2 * INCH * 0.1 * INCH, 1e-12);
    expect(result.rows[1]?.impossible).toBeUndefined();
    expect(stationFlows(result)).toEqual([110]);
  });

  test("are judged by the gap where it is known, else by the smaller of curtain and throat", () => {
    const seat = ["valve 2 in", "seat 45 deg width 0.06 in", "throat 1.7 in", "stem 0.3125 in"];
    const areaOf = (port: readonly string[], reading: string) =>
      run({ port, rows: [`0.9 28 ${reading}`] }).rows[0]?.impossible?.area;
    expect(areaOf(seat, "900")).toBe("gap");
    expect(
      areaOf(
        seat.filter((line) => !line.startsWith("seat")),
        "900",
      ),
    ).toBe("throat");
    expect(areaOf(["valve 2 in"], "900")).toBe("curtain");
    expect(areaOf(["throat 1.7 in", "stem 0.3125 in"], "900")).toBe("throat");
    expect(areaOf([], "900")).toBeUndefined();
    expect(areaOf(seat, "250")).toBeUndefined();
  });
});

describe("repeatability", () => {
  const REPEATS = ["0.1 28 100", "0.1 28 102", "0.2 28 200", "0.2 28 198", "0.3 28 300", "0.3 28 303"];
  const NO_REPEAT = { bench: ["shows flow"], port: [] };

  test("is what the bench states", () => {
    expect(run({ rows: REPEATS }).repeatability).toEqual({ deviation: 0.005, source: "bench" });
  });

  test("is pooled from repeated rows with 4 or more degrees of freedom (ISO 5725-2, worked by hand)", () => {
    // Relative to the means 101, 199, 301.5 and 400: squares of ±1/101, ±1/199, ±1.5/301.5, ±2/400, one degree each.
    const { repeatability } = run({ ...NO_REPEAT, rows: [...REPEATS, "0.4 28 402", "0.4 28 398"] });
    const squares = 2 * ((1 / 101) ** 2 + (1 / 199) ** 2 + (1.5 / 301.5) ** 2 + (2 / 400) ** 2);
    expect(repeatability).toMatchObject({ source: "pooled", degreesOfFreedom: 4 });
    checkClose(repeatability.deviation, Math.sqrt(squares / 4), 1e-9);
  });

  test("is 1 % with fewer, and where nothing was repeated (common practice)", () => {
    expect(run({ ...NO_REPEAT, rows: REPEATS }).repeatability).toEqual({
      deviation: 0.01,
      source: "default",
    });
    expect(run({ ...NO_REPEAT, rows: ["0.1 28 100"] }).repeatability.source).toBe("default");
  });

  test("is pooled over all runs of the file on the bench, without void rows", () => {
    const second = ["run s", "lift[in] depression[inH2O] flow[cfm]", "0.1 28 70 void", ...REPEATS].join("\n");
    const { runs } = evaluateText(smallRecord({ ...NO_REPEAT, rows: REPEATS, more: second }));
    expect(runs.map(({ repeatability }) => repeatability.degreesOfFreedom)).toEqual([6, 6]);
    expect(runs[0]?.repeatability).toEqual(runs[1]?.repeatability);
  });
});

describe("the uncertainty of a row that is left out of the means", () => {
  // 500 cfm an inch, between the stations and beyond them, and a thousandth of an inch: 0.5 cfm, twice over, in the lift alone.
  const least = (2 * 0.5) / 75;

  test.each([
    ["void between stations", '0.15 28.0 75.0 void "slipped"'],
    ["void beyond them", '0.25 28.0 75.0 void "slipped"'],
  ])("has its lift setting: %s", (_, left) => {
    const { rows } = run({ rows: ["0.1 28.0 50.0", "0.2 28.0 100.0", left] });
    expect(rows[2]?.branch).toBeUndefined();
    expect(rows[2]?.uncertainty).toBeGreaterThan(least);
  });

  test("is kept with what makes it impossible, as it was when that was decided", () => {
    const { rows } = run({ rows: ["0.1 28 50", "0.2 28 100", "0.3 28 900"] });
    const impossible = rows[2]?.impossible;
    const { effective = 0, geometric = 0, uncertainty = 1 } = impossible ?? {};
    expect(effective * (1 - uncertainty)).toBeGreaterThan(geometric);
    expect(uncertainty).toBeGreaterThan((2 * 8) / 900);
  });
});

describe("the uncertainty of a row", () => {
  /** Of the first row, relative, expanded. */
  const uncertaintyOf = (parts: Parts): number => run(parts).rows[0]?.uncertainty ?? Number.NaN;
  const TIGHT = ["shows flow", "repeat 0.001 %"];

  test("is twice the repeatability where the numbers are written closely", () => {
    checkClose(uncertaintyOf({ rows: ["0.1 28.0000 50.0000"] }), 0.01, 1e-4);
  });

  test("grows with the scale of the bench, which is stated with k = 2", () => {
    const bench = ["shows flow", "repeat 0.4 %", "uncertainty 0.6 %"];
    checkClose(uncertaintyOf({ bench, rows: ["0.1 28.0000 50.0000"] }), 0.01, 1e-4);
  });

  test("has a reading's last digit over the root of 12, and half of that of a depression", () => {
    checkClose(uncertaintyOf({ bench: TIGHT, rows: ["0.1 28.0000 50"] }), 2 / Math.sqrt(12) / 50, 1e-3);
    checkClose(uncertaintyOf({ bench: TIGHT, rows: ["0.1 28 50.0000"] }), 1 / Math.sqrt(12) / 28, 1e-3);
  });

  test("has nothing from a depression that cancels in a scaled display", () => {
    const bench = ["shows flow at 28 inH2O", "repeat 0.001 %"];
    checkClose(uncertaintyOf({ bench, rows: ["0.1 28 50.0000"] }), 2e-5, 0.02);
  });

  test("has nothing from the air, unless a reference or a bench air lets it in; both together let it out again", () => {
    const air = ["leak none", "air 20 degC 101325 Pa 50 %RH"];
    const rows = ["0.1 28.0000 50.0000"];
    // Half of 0.12896 %, the density's own (computed apart), times k = 2.
    const ofAir = 0.0012896;
    checkClose(uncertaintyOf({ bench: TIGHT, session: air, rows }), 2e-5, 0.02);
    checkClose(uncertaintyOf({ bench: TIGHT, session: [...air, "reference isa"], rows }), ofAir, 1e-3);
    const inIsa = ["shows flow in isa", "repeat 0.001 %"];
    checkClose(uncertaintyOf({ bench: inIsa, session: air, rows }), ofAir, 1e-3);
    checkClose(uncertaintyOf({ bench: inIsa, session: [...air, "reference isa"], rows }), 2e-5, 0.02);
  });

  test("has the lift setting on the slope of its branch, and none at a lone station", () => {
    const bench = [...TIGHT, "lift-setting 0.002 in"];
    // 500 cfm/in times 0.002 in on 50 cfm is 2 %, times k = 2.
    checkClose(uncertaintyOf({ bench, rows: ["0.1 28.0000 50.0000", "0.2 28.0000 100.0000"] }), 0.04, 1e-3);
    checkClose(uncertaintyOf({ bench, rows: ["0.1 28.0000 50.0000"] }), 2e-5, 0.02);
  });

  test("has a signal by the slope of its table", () => {
    const bench = ["shows signal", "repeat 0.001 %", "signal[V] flow[cfm]", "1 50", "2 100", "3 250"];
    const columns = "lift[in] depression[inH2O] signal[V]";
    // 150 cfm/V times 0.1 V/√12 on 175 cfm.
    const expected = (2 * 150 * 0.1) / Math.sqrt(12);
    checkClose(uncertaintyOf({ bench, columns, rows: ["0.1 28.0000 2.5"] }), expected / 175, 1e-3);
    // At the table's last point the slope is that of the side that it has.
    checkClose(uncertaintyOf({ bench, columns, rows: ["0.1 28.0000 3.0"] }), expected / 250, 1e-3);
  });

  test("meets a simulation of the whole chain with leak and reference (seeded)", () => {
    const result = run({
      bench: ["shows flow", "repeat 0.6 %"],
      session: ["target 28 inH2O", "leak 6 cfm at 12 inH2O", "air 20 degC 101325 Pa 50 %RH", "reference isa"],
      rows: ["0.1 24.0 121"],
    });
    const air = result.setup.air.value;
    const reference = result.setup.reference?.value.state.density ?? Number.NaN;
    const normals = seededNormals(7);
    const normal = () => normals.next().value;
    // A sum of two squares of normals is exponential; its distribution function is uniform.
    const lastDigit = () => Math.exp(-(normal() ** 2 + normal() ** 2) / 2) - 0.5;
    const draws = Array.from({ length: 60_000 }, () => {
      const reading = 121 + lastDigit();
      const depression = 24 + 0.1 * lastDigit();
      const leak = (6 + lastDigit()) * Math.sqrt(depression / 12);
      const density = air.density + air.densityUncertainty * normal();
      const corrected = (reading - leak) * Math.sqrt(28 / depression) * Math.sqrt(density / reference);
      return corrected * (1 + 0.006 * normal());
    });
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    const squares = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0);
    const [row] = result.rows;
    checkClose(row?.flow?.corrected, mean * CFM, 1e-3);
    checkClose(row?.uncertainty, (2 * Math.sqrt(squares / (draws.length - 1))) / mean, 0.01);
  });
});

// --- laws -------------------------------------------------------------------------------------------------

interface Units {
  readonly lift: string;
  readonly depression: string;
  readonly flow: string;
  readonly temperature: string;
  readonly pressure: string;
  readonly area: string;
}

const INCHES: Units = {
  lift: "in",
  depression: "inH2O",
  flow: "cfm",
  temperature: "degF",
  pressure: "inHg",
  area: "in2",
};

const METRIC: Units = {
  lift: "mm",
  depression: "kPa",
  flow: "m3/h",
  temperature: "degC",
  pressure: "hPa",
  area: "cm2",
};

interface Reading {
  readonly lift: number;
  readonly depression: number;
  readonly flow: number;
}

/** A session in SI, written in the units asked for. */
function written(readings: readonly Reading[], units: Units): string {
  const in_ = (si: number, symbol: string) => fromSI(si, unit(symbol)).toFixed(14);
  const q = (si: number, symbol: string) => `${in_(si, symbol)} ${symbol}`;
  return smallRecord({
    bench: ["shows flow in isa", "repeat 0.5 %", `lift-setting ${q(2e-5, units.lift)}`],
    port: [
      "side intake",
      `valve ${q(0.052, units.lift)}`,
      `seat 45 deg width ${q(0.0014, units.lift)}`,
      `throat ${q(0.046, units.lift)}`,
      `stem ${q(0.008, units.lift)}`,
      `section pinch ${q(0.0013, units.area)}`,
    ],
    session: [
      `target ${q(7000, units.depression)}`,
      `quote ${q(6500, units.depression)}`,
      `leak ${q(0.001, units.flow)} at ${q(3000, units.depression)}`,
      `air ${q(297, units.temperature)} ${q(98000, units.pressure)} 40 %RH`,
      "reference sae-j607",
    ],
    columns: `lift[${units.lift}] depression[${units.depression}] flow[${units.flow}]`,
    rows: readings.map(
      ({ lift, depression, flow }) =>
        `${in_(lift, units.lift)} ${in_(depression, units.depression)} ${in_(flow, units.flow)}`,
    ),
  });
}

const readings = fc.array(
  fc.record({
    lift: fc.integer({ min: 1, max: 28 }).map((n) => n * 5e-4),
    depression: fc.integer({ min: 6800, max: 7200 }),
    flow: fc.integer({ min: 20, max: 120 }).map((n) => n * 1e-3),
  }),
  { maxLength: 12 },
);

/** Every number of a row that must not depend on how it was written. */
function numbers({
  lift,
  depression,
  flow,
  massFlow,
  effectiveArea,
}: RowResult): readonly (number | undefined)[] {
  return [lift, depression, flow?.corrected, flow?.port, flow?.leak, massFlow, effectiveArea];
}

function checkSame(actual: readonly (number | undefined)[], expected: readonly (number | undefined)[]): void {
  expect(actual.length).toBe(expected.length);
  actual.forEach((value, index) => {
    const other = expected[index];
    if (other === undefined) expect(value).toBeUndefined();
    else checkClose(value, other, 1e-9);
  });
}

describe("results", () => {
  test("do not depend on the units that a record is written in", () => {
    fc.assert(
      fc.property(readings, (session) => {
        const inches = evaluateRun(written(session, INCHES));
        const metric = evaluateRun(written(session, METRIC));
        checkSame(metric.rows.flatMap(numbers), inches.rows.flatMap(numbers));
        for (const branch of ["rising", "falling"] as const) {
          const stations = (result: RunResult) => result[branch].flatMap(({ lift, flow }) => [lift, flow]);
          checkSame(stations(metric), stations(inches));
        }
        const { mean, time } = summary(metric);
        checkSame([mean?.flow, time], [summary(inches).mean?.flow, summary(inches).time]);
      }),
      { numRuns: 60 },
    );
  });

  test("do not depend on void rows, wherever they stand", () => {
    fc.assert(
      fc.property(readings, fc.nat(), fc.integer({ min: 1, max: 900 }), (session, place, flow) => {
        const rows = session.map((r) => `${r.lift} ${r.depression} ${r.flow}`);
        const at = place % (rows.length + 1);
        const columns = "lift[m] depression[Pa] flow[m3/s]";
        const plain = run({ columns, rows });
        const more = run({ columns, rows: rows.toSpliced(at, 0, `0.007 7000 0.${flow} void "x"`) });
        const kept = more.rows.filter(({ row }) => row.void === undefined);
        const strip = (list: readonly RowResult[]) => list.map(({ row: _, ...rest }) => rest);
        expect(strip(kept)).toEqual(strip(plain.rows));
        expect(more.rising.map((s) => [s.lift, s.flow, s.uncertainty])).toEqual(
          plain.rising.map((s) => [s.lift, s.flow, s.uncertainty]),
        );
        expect(summary(more)).toEqual(summary(plain));
      }),
      { numRuns: 60 },
    );
  });

  test("do not depend on the order of blocks", () => {
    const [version, ...blocks] = AS_CAST.split(/\n(?=bench |engine |head |port |session |run )/);
    const expected = evaluateRun(AS_CAST);
    fc.assert(
      fc.property(fc.shuffledSubarray(blocks, { minLength: blocks.length }), (order) => {
        const result = evaluateRun([version, ...order].join("\n"));
        expect(result.rows.map(numbers)).toEqual(expected.rows.map(numbers));
        expect(result.rows.map((row) => row.uncertainty)).toEqual(
          expected.rows.map((row) => row.uncertainty),
        );
      }),
      { numRuns: 20 },
    );
  });

  test("of a row taken twice have the same mean, known better", () => {
    const once = run({ rows: ["0.1 28 50.0", "0.2 28 100.0"] });
    const twice = run({ rows: ["0.1 28 50.0", "0.1 28 50.0", "0.2 28 100.0", "0.2 28 100.0"] });
    expect(stationFlows(twice)).toEqual(stationFlows(once));
    twice.rising.forEach((station, index) => {
      expect(station.uncertainty).toBeLessThan(once.rising[index]?.uncertainty ?? 0);
    });
  });

  test("blowing have 3.649 % less effective area than drawing at 28 inH2O from one atmosphere (computed apart)", () => {
    const area = (direction: string) =>
      run({
        session: ["leak none", "target 28 inH2O", "air 20 degC 101325 Pa 0 %RH"],
        run: [`direction ${direction}`],
        rows: ["0.5 28 250"],
      }).rows[0]?.effectiveArea ?? Number.NaN;
    checkClose(area("draws"), 1139.22831e-6, 1e-8);
    checkClose(area("blows"), 1099.12095e-6, 1e-8);
  });

  test("whatever a table holds, no run throws and every number is finite", () => {
    const cell = fc.oneof(
      fc.constantFrom("-", "0", "0.0", "1e9", "0,5", "28", "999999999999", ".5", "1/3", "abc"),
      fc.integer({ min: 0, max: 1000 }).map((n) => String(n / 10)),
    );
    const shows = fc.constantFrom(
      "flow",
      "flow at 28 inH2O",
      "flow at 0 inH2O",
      "percent",
      "signal",
      "drop",
      "meter-flow",
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { maxLength: 8 }), shows, (cells, kind) => {
        const result = run({ bench: [`shows ${kind}`], rows: cells.map((row) => row.join(" ")) });
        for (const row of result.rows) {
          for (const value of [...numbers(row), row.uncertainty]) {
            if (value !== undefined) expect(Number.isFinite(value)).toBe(true);
          }
        }
        for (const value of Object.values(summary(result))) {
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
        }
      }),
    );
  });
});

test("the depression of a row is read in its own unit", () => {
  checkClose(run({ rows: ["0.1 28 50"] }).rows[0]?.depression, 28 * INH2O, 1e-12);
});
