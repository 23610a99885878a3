import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type SlipPoints, unitSlips } from "../../../shared/calc/unit-slip.ts";

interface Point {
  readonly lift: number;
  readonly flow: number;
}

function columns(points: readonly Point[]): SlipPoints {
  return { lift: points.map(({ lift }) => lift), flow: points.map(({ flow }) => flow) };
}

const FLOWS = [50, 100, 148, 192, 228, 250, 262];

/** A sweep in even steps of lift. */
function sweep(flows: readonly number[]): Point[] {
  return flows.map((flow, index) => ({ lift: 0.1 * (index + 1), flow }));
}

function checkSlips(points: readonly Point[], expected: Readonly<Record<number, number>>): void {
  const found = [...unitSlips(columns(points))].map(([index, slip]) => [index, slip.near] as const);
  expect(Object.fromEntries(found)).toEqual(expected);
}

describe("a flow near a known factor of its neighbours", () => {
  test("of two readings of one lift only the one that its surroundings contradict is a slip", () => {
    const twice = (first: number, second: number) => [
      { lift: 0.1, flow: 55 },
      { lift: 0.2, flow: first },
      { lift: 0.2, flow: second },
      { lift: 0.3, flow: 150 },
    ];
    checkSlips(twice(108, 1080), { 2: 10 });
    checkSlips(twice(1080, 108), { 1: 10 });
  });

  test.each([25.4, 2.1189, 1.699, 10, 100, 1000])("of %d or its inverse is a slip", (factor) => {
    for (const near of [factor, 1 / factor]) {
      const flows = FLOWS.with(3, ((148 + 228) / 2) * near);
      checkSlips(sweep(flows), { 3: near });
    }
  });

  test("is one within 5 % of the factor and none beyond", () => {
    const at = (factor: number) => sweep([100, 100 * factor, 100]);
    checkSlips(at(10.5), { 1: 10 });
    checkSlips(at(9.5), { 1: 10 });
    checkSlips(at(10.51), {});
    checkSlips(at(9.49), {});
  });

  test("says what was expected: the straight line between the neighbours, by lift", () => {
    const slip = unitSlips({ lift: [0.1, 0.2, 0.5], flow: [50, 750, 150] }).get(1);
    expect(slip?.column).toBe("flow");
    expect(slip?.expected).toBeCloseTo(75, 12);
    expect(slip?.factor).toBeCloseTo(10, 12);
  });

  test("does not drag its right neighbours along", () => {
    checkSlips(sweep([50, 1000, 148, 192, 228]), { 1: 10 });
  });

  test("of two that are as far apart from each other is the one further from what stands around them, in any unit", () => {
    for (const unit of [1, 1 / 3, 0.47194744, 25.4, 1e-7]) {
      checkSlips(
        sweep([100, 100, 211.89, 211.89]).map(({ lift, flow }, index) => ({
          lift: index === 1 || index === 2 ? 0.2 : lift,
          flow: flow * unit,
        })),
        { 2: 2.1189 },
      );
    }
  });

  test("is found beside another slip", () => {
    checkSlips(sweep(FLOWS.with(2, 1480).with(5, 25)), { 2: 10, 5: 0.1 });
  });

  test("is not looked for at the ends of a sweep, which lie between nothing", () => {
    checkSlips(sweep([500, 100, 150]), {});
    checkSlips(sweep([100]), {});
    checkSlips([], {});
  });

  test("is judged between repeats of the same lift too", () => {
    checkSlips(
      [
        { lift: 0.2, flow: 100 },
        { lift: 0.2, flow: 1000 },
        { lift: 0.2, flow: 101 },
      ],
      { 1: 10 },
    );
  });
});

describe("a lift outside its neighbours, near a known factor of its place", () => {
  test("is a slip of the lift", () => {
    const points = sweep(FLOWS).with(3, { lift: 4, flow: 192 });
    const slip = unitSlips(columns(points)).get(3);
    expect(slip?.column).toBe("lift");
    expect(slip?.near).toBe(10);
    expect(slip?.expected).toBeCloseTo(0.4, 12);
  });

  test("may also be found where its flow belongs, if the steps are uneven", () => {
    const points = { lift: [0.1, 1.5, 0.5], flow: [50, 75, 250] };
    expect(unitSlips(points).get(1)).toMatchObject({ column: "lift", near: 10 });
  });
});

describe("a healthy sweep", () => {
  const healthy = fc
    .array(fc.double({ min: 0.01, max: 0.6, noNaN: true }), { minLength: 3, maxLength: 30 })
    .map((steps) => {
      let flow = 100;
      return steps.map((step, index) => {
        flow *= 1 + step;
        return { lift: index + 1, flow };
      });
    });

  test("has no slips, on the way up or down", () => {
    fc.assert(
      fc.property(healthy, (points) => {
        checkSlips(points, {});
        checkSlips([...points].reverse(), {});
      }),
    );
  });

  test("has slips at the same places whatever the unit of flow and lift", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ lift: fc.integer({ min: 1, max: 9 }), flow: fc.integer({ min: 1, max: 999 }) })),
        (points) => {
          const scaled = points.map(({ lift, flow }) => ({ lift: lift * 2, flow: flow * 4 }));
          expect([...unitSlips(columns(scaled)).keys()]).toEqual([...unitSlips(columns(points)).keys()]);
        },
      ),
    );
  });
});
