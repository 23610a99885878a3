import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { POINT_CALCULATIONS } from "../../../../shared/calc/points/index.ts";
import { type NamedValue, pointValues } from "../../../../shared/calc/points/point-values.ts";
import type { RunResult } from "../../../../shared/model/result.ts";
import { evaluateRun } from "../../../kit/evaluate.ts";
import { rowResult } from "../../../kit/row-result.ts";
import { AS_CAST, type Parts, smallRecord } from "../../sample-record.ts";
import { checkClose } from "../close.ts";

const CFM = 4.719474432e-4; // m3/s, NIST SP 811 B.8
const INCH = 0.0254;

/** The values of a run's first row, or of another. */
function valuesOf(run: RunResult, row = 0): ReadonlyMap<string, NamedValue> {
  const result = run.rows[row];
  if (result === undefined) throw new RangeError(`no row ${row}`);
  return new Map(pointValues({ result, setup: run.setup }).map((named) => [named.path.join("."), named]));
}

function checkValue(text: string, row: number, id: string, expected: number, relative: number): void {
  checkClose(valuesOf(evaluateRun(text), row).get(id)?.value, expected, relative);
}

/** A record of one row in dry air of 20 degC and one atmosphere. */
function atTwenty(parts: Parts): string {
  return smallRecord({
    session: ["leak none", "target 28 inH2O", "air 20 degC 101325 Pa 0 %RH"],
    ...parts,
  });
}

describe("the list of calculations for a reading", () => {
  test("has each id once, and says of each what it is and where it comes from", () => {
    const ids = POINT_CALCULATIONS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, doc, source } of POINT_CALCULATIONS) {
      expect(id).toMatch(/^[a-z][A-Za-z]*(\.[a-z][A-Za-z]*)?$/);
      expect(doc).toMatch(/\.$/);
      expect(source).not.toBe("");
    }
  });

  test("gives the same values in the same order for every row of a run, also for rows that say nothing", () => {
    const run = evaluateRun(smallRecord({ rows: ["0.1 28.0 50.0", "- - -", "0.2 - 90.0"] }));
    const paths = run.rows.map((_, row) => [...valuesOf(run, row).keys()]);
    expect(paths[1]).toEqual(paths[0]);
    expect(paths[2]).toEqual(paths[0]);
  });

  test("gives nothing for a row without readings", () => {
    const run = evaluateRun(smallRecord({ rows: ["- - -"] }));
    expect([...valuesOf(run).values()].filter(({ value }) => value !== undefined)).toEqual([]);
  });
});

describe("the sample record at 0.300 in (computed apart, from the formulas)", () => {
  test.each([
    ["correctedFlow", 185.93554189805 * CFM],
    ["uncertainty", 1.68053661 * CFM],
    ["massFlow", 0.10178635909],
    ["effectiveArea", 8.3291520157e-4],
    ["liftRatio", 0.148514851485],
    ["cd.curtain", 0.67812672204],
    ["cd.throat", 0.5389023039249],
    ["cd.head", 0.40284755765],
    ["velocity.pinch", 66.23047093533],
  ])("%s", (id, expected) => {
    checkValue(AS_CAST, 2, id, expected, 1e-8);
  });
});

describe("effective area", () => {
  test("of 250 cfm at 28 inH2O, 20 degC dry is 1139.02 mm2 in ideal air, 0.018 % more in real air (computed apart)", () => {
    const text = atTwenty({ rows: ["0.5 28 250"] });
    checkValue(text, 0, "effectiveArea", 1139.0207e-6 * Math.sqrt(1.2045573 / 1.20411832), 1e-7);
  });

  test("blowing: the same mass needs 3.649 % less area than drawing (computed apart)", () => {
    const drawn = valuesOf(evaluateRun(atTwenty({ run: ["direction draws"], rows: ["0.5 28 250"] })));
    const blown = valuesOf(evaluateRun(atTwenty({ run: ["direction blows"], rows: ["0.5 28 250"] })));
    const areas = [drawn, blown].map((values) => values.get("effectiveArea")?.value ?? Number.NaN);
    checkClose((areas[0] ?? 0) / (areas[1] ?? 1) - 1, 0.03649, 1e-3);
    expect(blown.get("massFlow")?.value).toBe(drawn.get("massFlow")?.value);
  });
});

describe("discharge coefficients", () => {
  const result = rowResult({ lift: 0.01, effectiveArea: 962.07748e-6 });

  test("0.12 kg/s through a 44 mm valve at 10 mm: 0.69599721 on the curtain in ideal air (computed apart)", () => {
    const { setup } = evaluateRun(smallRecord({ port: ["valve 44 mm"], rows: [] }));
    const cd = pointValues({ result, setup }).find(({ path }) => path.join(".") === "cd.curtain");
    checkClose(cd?.value, 0.69599721, 1e-7);
  });

  test("the same from its reading, in real air (computed apart)", () => {
    const text = atTwenty({
      port: ["side intake", "valve 44 mm"],
      columns: "lift[mm] depression[inH2O] flow[L/s]",
      rows: ["10 28 99.62165839096603"],
    });
    checkValue(text, 0, "massFlow", 0.12, 1e-9);
    checkValue(text, 0, "cd.curtain", 0.695870364764652, 1e-9);
  });

  test("are left out where the port does not give the area", () => {
    const values = valuesOf(evaluateRun(smallRecord({ port: ["valve 44 mm"], rows: ["0.4 28 200"] })));
    expect(values.get("cd.gap")?.value).toBeUndefined();
    expect(values.get("cd.throat")?.value).toBeUndefined();
    expect(values.get("cd.curtain")?.value).toBeGreaterThan(0);
  });

  test("on curtain and gap are left out at zero lift", () => {
    const values = valuesOf(evaluateRun(AS_CAST.replace("0.100     28.0 ", "0.000     28.0 ")));
    expect(values.get("cd.curtain")?.value).toBeUndefined();
    expect(values.get("cd.gap")?.value).toBeUndefined();
    expect(values.get("cd.head")?.value).toBeGreaterThan(0);
  });

  test("on the gap are never below those on the curtain or the throat: it is the least of the areas", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), (thou) => {
        const lift = (thou / 1000).toFixed(3);
        const values = valuesOf(evaluateRun(AS_CAST.replace("0.100     28.0 ", `${lift}     28.0 `)));
        const [gap, curtain, throat] = ["gap", "curtain", "throat"].map(
          (area) => values.get(`cd.${area}`)?.value ?? Number.NaN,
        );
        expect(gap).toBeGreaterThanOrEqual((throat ?? 0) * (1 - 1e-12));
        expect(gap).toBeGreaterThanOrEqual((curtain ?? 0) * (1 - 1e-12));
      }),
      { numRuns: 25 },
    );
  });

  test("two valves double the areas and halve the coefficients", () => {
    const one = valuesOf(evaluateRun(AS_CAST));
    const two = valuesOf(evaluateRun(AS_CAST.replace("  stem  ", "  valves 2\n  stem  ")));
    for (const id of ["cd.curtain", "cd.gap", "cd.throat", "cd.head"]) {
      checkClose(two.get(id)?.value, (one.get(id)?.value ?? 0) / 2, 1e-12);
    }
    expect(two.get("effectiveArea")?.value).toBe(one.get("effectiveArea")?.value);
  });
});

describe("velocity", () => {
  test("250 cfm through 1.6 in2 is 375 ft/s (arithmetic)", () => {
    const text = smallRecord({ port: ["section pinch 1.6 in2"], rows: ["0.5 28 250"] });
    checkValue(text, 0, "velocity.pinch", 375 * 0.3048, 1e-12);
  });

  test("through the curtain is flow over pi D L (continuity)", () => {
    const text = smallRecord({ rows: ["0.5 28 250"] });
    checkValue(text, 0, "velocity.curtain", (250 * CFM) / (Math.PI * 2 * INCH * 0.5 * INCH), 1e-12);
  });

  test("is that of the row's own depression, not of the quoted one", () => {
    const text = smallRecord({
      port: ["section pinch 1.6 in2"],
      run: ["quote 28 inH2O"],
      rows: ["0.5 10 250"],
    });
    checkValue(text, 0, "velocity.pinch", 375 * 0.3048, 1e-12);
  });

  test("a section that the port states as its throat takes the place of the computed one", () => {
    const text = smallRecord({ port: ["section throat 1.6 in2"], rows: ["0.5 28 250"] });
    checkValue(text, 0, "velocity.throat", 375 * 0.3048, 1e-12);
  });
});
