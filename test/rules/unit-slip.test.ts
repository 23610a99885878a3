// A number in a wrong unit or with a slipped point is named; a healthy sweep never is.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkRecord, codesOf, findingOf, findingsOf, record } from "../kit/check-record.ts";

/** No port, so that only the neighbours speak. */
const SESSION = ["bench north", "target 28 inH2O", "air 20 degC 1000 hPa 40 %RH", "leak none"];

const LIFTS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6];
/** A sweep whose flow lies on a line between any two neighbours but for a little. */
const FLOWS = [56, 108, 156, 195, 222, 238];

function sweep(lifts: readonly number[], flows: readonly number[]): string {
  const rows = lifts.map((lift, index) => `${lift.toFixed(6)} 28.0 ${(flows[index] ?? 0).toFixed(6)}`);
  return record({ session: SESSION, rows });
}

/** The findings of a sweep as `code column factor`. */
function slipsIn(fixture: string): readonly string[] {
  return findingsOf(fixture).map(({ finding }) => `${finding.code} ${finding.args["column"] ?? ""}`.trim());
}

// 1 in = 25.4 mm (NIST SP 811); 1 L/s = 2.1189 cfm and 1 cfm = 1.6990 m3/h (NIST SP 811, B.8, rounded); powers of ten.
const FACTORS = [25.4, 2.1189, 1.699, 10, 100, 1000].flatMap((factor) => [factor, 1 / factor]);

describe.each(FACTORS)("a factor of %f", (factor) => {
  test("in one flow is named, alone", () => {
    for (let at = 1; at < FLOWS.length - 1; at++) {
      const flows = FLOWS.map((flow, index) => {
        const [before = 0, after = 0] = [FLOWS[index - 1], FLOWS[index + 1]];
        return index === at ? ((before + after) / 2) * factor : flow;
      });
      expect(slipsIn(sweep(LIFTS, flows)), `station ${at}`).toEqual(["unit-slip flow"]);
    }
  });

  test("is named up to 5 % off it, and not at 6 %", () => {
    const off = (share: number) =>
      sweep(LIFTS.slice(0, 3), [56, ((56 + 156) / 2) * factor * (1 + share), 156]);
    expect(slipsIn(off(0.049))).toContain("unit-slip flow");
    expect(slipsIn(off(-0.049))).toContain("unit-slip flow");
    expect(slipsIn(off(0.06))).not.toContain("unit-slip flow");
    expect(slipsIn(off(-0.06))).not.toContain("unit-slip flow");
  });

  test("in one lift is named, in the lift's cell", () => {
    // A lift that is half of its neighbours' middle or less still stands between others; such a one shows in its flow.
    const lifts = LIFTS.map((lift, index) => (index === 3 ? lift * factor : lift));
    const [found, ...others] = slipsIn(sweep(lifts, FLOWS));
    expect(found).toBe("unit-slip lift");
    expect(others).toEqual([]);
  });
});

test("says what the factor most likely is, and what the neighbours lead to", () => {
  const fixture = record({
    session: SESSION,
    rows: ["0.100 28.0 55.0", "0.200 28.0 48.4", "0.300 28.0 150.0"],
  });
  // (55 + 150)/2 = 102.5; 48.4/102.5 = 0.4722, by hand; 1/2.1189 = 0.47194.
  expect(findingOf(fixture, "unit-slip").message).toBe(
    "this flow is 0.4722 times the 102.5 cfm that the points around it lead to: L/s and cfm",
  );
});

test("a row that slipped is left out of means, and two that slipped are both named", () => {
  checkRecord(`
    headnote 1
    bench north
      shows flow
      repeat 0.4 %
    session 2026-03-02
      bench north
      target 28 inH2O
      air 20 degC 1000 hPa 40 %RH
      leak none
    run r1
      expect flow 106 cfm at 0.200 in within 1 %
      lift[in] depression[inH2O] flow[cfm]
      0.100    28.0              56.0
      0.200    28.0              1080
    #                            ^^^^ warning[unit-slip]
      0.300    28.0              156.0
      0.400    28.0              19.5
    #                            ^^^^ warning[unit-slip]
      0.500    28.0              222.0
  `);
});

test("the first and the last row have one neighbour and are not judged", () => {
  expect(codesOf(sweep(LIFTS.slice(0, 3), [560, 108, 156]))).not.toContain("drift");
  expect(slipsIn(sweep([0.1, 0.2], [56, 1080]))).toEqual([]);
});

/** A sweep as ports give it: evenly spaced lifts, flow rising along a smooth curve that flattens. */
const healthy = fc
  .record({
    count: fc.integer({ min: 3, max: 14 }),
    first: fc.double({ min: 0.04, max: 0.1, noNaN: true }),
    step: fc.double({ min: 0.04, max: 0.1, noNaN: true }),
    top: fc.double({ min: 30, max: 400, noNaN: true }),
    knee: fc.double({ min: 0.15, max: 0.8, noNaN: true }),
  })
  .map(({ count, first, step, top, knee }) => {
    const lifts = Array.from({ length: count }, (_, index) => first + index * step);
    return { lifts, flows: lifts.map((lift) => top * Math.tanh(lift / knee)) };
  });

describe("property: a healthy sweep", () => {
  test("has no slip on the way up, nor up and down again", () => {
    fc.assert(
      fc.property(healthy, ({ lifts, flows }) => {
        expect(slipsIn(sweep(lifts, flows))).toEqual([]);
        const back = [...lifts, ...lifts.toReversed().slice(1)];
        expect(slipsIn(sweep(back, [...flows, ...flows.toReversed().slice(1)]))).toEqual([]);
      }),
      { numRuns: 120 },
    );
  });

  test("has none with every point read twice or thrice", () => {
    fc.assert(
      fc.property(healthy, fc.integer({ min: 2, max: 3 }), ({ lifts, flows }, times) => {
        const each = <T>(items: readonly T[]) => items.flatMap((item) => Array<T>(times).fill(item));
        expect(slipsIn(sweep(each(lifts), each(flows)))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test("is judged the same whatever the order of unrelated void rows", () => {
    fc.assert(
      fc.property(healthy, fc.nat(), ({ lifts, flows }, at) => {
        const rows = lifts.map((lift, index) => `${lift.toFixed(4)} 28.0 ${(flows[index] ?? 0).toFixed(2)}`);
        const place = at % rows.length;
        const voided = [...rows.slice(0, place), '0.2 28.0 9999 void "hand"', ...rows.slice(place)];
        expect(codesOf(record({ session: SESSION, rows: voided }))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
