import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  curtainArea,
  gapArea,
  headArea,
  liftWhereGapReachesThroat,
  throatArea,
  type ValveGeometry,
} from "../../../shared/calc/valve-geometry.ts";
import { checkClose } from "./close.ts";

const degree = Math.PI / 180;

function valveWithSeat(angle: number): ValveGeometry {
  return { head: 0.04, seatAngle: angle * degree, seatWidthProjected: 0.0015, throat: 0.035, stem: 0.007 };
}

const inchValve: ValveGeometry = {
  head: 2.02,
  seatAngle: 45 * degree,
  seatWidthProjected: 0.07,
  throat: 1.78,
  stem: 0.3415,
};

const anyValve: fc.Arbitrary<ValveGeometry> = fc
  .record({
    head: fc.double({ min: 0.015, max: 0.06, noNaN: true }),
    angle: fc.nat(600).map((tenths) => tenths / 10),
    width: fc.nat(300).map((thousandths) => thousandths / 1000),
    throat: fc.double({ min: 0.4, max: 0.98, noNaN: true }),
    stem: fc.double({ min: 0, max: 0.35, noNaN: true }),
  })
  .map(({ head, angle, width, throat, stem }) => ({
    head,
    seatAngle: angle * degree,
    seatWidthProjected: width * head,
    throat: throat * head,
    stem: stem * head,
  }));

const anyLift = fc.nat(30_000).map((micrometres) => micrometres * 1e-6);

/** Area of the shortest cone frustum from the inner edge of the valve's face to a point of the seat's face. */
function shortestFrustum(valve: ValveGeometry, lift: number): number {
  const { head, seatAngle, seatWidthProjected: width } = valve;
  const inner = head / 2 - width;
  const frustums = Array.from({ length: 20_001 }, (_, step) => {
    const across = (width * step) / 20_000;
    return { across, slant: Math.hypot(lift - across * Math.tan(seatAngle), across) };
  });
  const shortest = frustums.reduce((best, other) => (other.slant < best.slant ? other : best));
  return Math.PI * (2 * inner + shortest.across) * shortest.slant;
}

describe("gap area", () => {
  test.each([
    [30, [1, 2, 3, 4, 6, 8, 10], [101.84396, 206.04412, 312.60047, 420.2392, 646.92217, 881.7309, 923.62824]],
    [
      45,
      [1, 2, 3, 4, 6, 8, 10],
      [83.30406, 168.82955, 256.57649, 352.63066, 573.72247, 806.84592, 923.62824],
    ],
    [46, [1, 2, 3, 4, 6, 8, 10], [81.83685, 165.8547, 252.05355, 347.11897, 567.61077, 800.56615, 923.62824]],
    [
      50,
      [1, 2, 3, 4, 6, 8, 10],
      [75.71129, 153.41128, 233.09997, 323.29496, 540.83037, 772.98714, 923.62824],
    ],
  ])("of a 40 mm valve on a %d deg seat (Heywood 1988, computed apart with numpy)", (angle, lifts, areas) => {
    lifts.forEach((lift, index) => {
      checkClose(gapArea(valveWithSeat(angle), lift / 1000), (areas[index] ?? 0) * 1e-6, 1e-7);
    });
  });

  test("of a 2.02 in valve (Heywood 1988, computed apart with numpy)", () => {
    checkClose(gapArea(inchValve, 0.05), 0.211592, 3e-6);
    checkClose(gapArea(inchValve, 0.1), 0.428738, 3e-6);
    checkClose(gapArea(inchValve, 0.3), 1.472816, 1e-6);
    checkClose(gapArea(inchValve, 0.5), 2.396861, 1e-6);
    expect(gapArea(inchValve, 0.6)).toBe(gapArea(inchValve, 0.5));
  });

  test("is the shortest slant across the seat (searched numerically)", () => {
    for (const angle of [30, 45]) {
      for (const lift of [0.001, 0.002, 0.004, 0.006]) {
        const valve = valveWithSeat(angle);
        checkClose(gapArea(valve, lift), shortestFrustum(valve, lift), 1e-4);
      }
    }
  });

  test("never falls with lift", () => {
    fc.assert(
      fc.property(anyValve, anyLift, anyLift, (valve, a, b) => {
        const low = gapArea(valve, Math.min(a, b)) ?? Number.NaN;
        expect(gapArea(valve, Math.max(a, b))).toBeGreaterThanOrEqual(low * (1 - 1e-12));
      }),
    );
  });

  test("has no step at any lift, the joins of its stages included", () => {
    fc.assert(
      fc.property(anyValve, anyLift, (valve, lift) => {
        const { seatAngle, seatWidthProjected } = valve;
        const join = seatWidthProjected / (Math.sin(seatAngle) * Math.cos(seatAngle));
        const steepest = 2 * Math.PI * valve.head;
        for (const at of [lift, join, liftWhereGapReachesThroat(valve) ?? 0]) {
          if (!(at > 1e-9 && at < 1)) continue;
          const below = gapArea(valve, at - 1e-9) ?? Number.NaN;
          const above = gapArea(valve, at + 1e-9) ?? Number.NaN;
          expect(above - below).toBeLessThanOrEqual(steepest * 2e-9 + 1e-15);
        }
      }),
    );
  });

  test("scales with the square of size", () => {
    fc.assert(
      fc.property(anyValve, anyLift, (valve, lift) => {
        const inInches = {
          head: valve.head / 0.0254,
          seatAngle: valve.seatAngle,
          seatWidthProjected: valve.seatWidthProjected / 0.0254,
          throat: valve.throat / 0.0254,
          stem: valve.stem / 0.0254,
        };
        checkClose((gapArea(inInches, lift / 0.0254) ?? 0) * 0.0254 ** 2, gapArea(valve, lift) ?? 1, 1e-9);
      }),
    );
  });

  test("is never more than throat, and than curtain on a seat without width", () => {
    fc.assert(
      fc.property(anyValve, anyLift, (valve, lift) => {
        expect(gapArea(valve, lift)).toBeLessThanOrEqual(throatArea(valve.throat, valve.stem) ?? 0);
        const sharp = gapArea({ ...valve, seatWidthProjected: 0 }, lift);
        expect(sharp).toBeLessThanOrEqual(curtainArea(valve.head, lift) * (1 + 1e-12));
      }),
    );
  });

  test("at low lift is in proportion to the cosine of the seat angle", () => {
    const at = (angle: number) => gapArea(valveWithSeat(angle), 1e-9) ?? 0;
    checkClose(at(30) / at(45), 1.2247449, 1e-6);
    checkClose(at(46) / at(45), 0.9823953, 1e-6);
    checkClose(at(50) / at(45), 0.909039, 1e-6);
  });

  test("is zero on the seat and nothing below it", () => {
    expect(gapArea(inchValve, 0)).toBe(0);
    expect(gapArea(inchValve, -0.1)).toBeUndefined();
    expect(gapArea(inchValve, Number.NaN)).toBeUndefined();
  });

  test.each([
    ["a throat as wide as the head", { ...inchValve, throat: 2.02 }],
    ["a throat narrower than the stem", { ...inchValve, stem: 1.8 }],
    ["a stem below zero", { ...inchValve, stem: -0.1 }],
    ["a seat wider than the head's radius", { ...inchValve, seatWidthProjected: 1.01 }],
    ["a seat width below zero", { ...inchValve, seatWidthProjected: -0.01 }],
    ["a seat along the stem", { ...inchValve, seatAngle: Math.PI / 2 }],
    ["a seat that is not a number", { ...inchValve, seatAngle: Number.NaN }],
  ])("is not computed for %s", (_, valve) => {
    expect(gapArea(valve, 0.1)).toBeUndefined();
    expect(liftWhereGapReachesThroat(valve)).toBeUndefined();
  });
});

describe("lift where the throat becomes the narrowest place", () => {
  test.each([
    [30, 8.353618],
    [45, 8.987593],
    [46, 9.040889],
    [50, 9.275223],
  ])("of a 40 mm valve on a %d deg seat is %d mm (Heywood 1988, computed apart)", (angle, expected) => {
    checkClose(liftWhereGapReachesThroat(valveWithSeat(angle)), expected / 1000, 1e-7);
  });

  test("of a 2.02 in valve is 0.4549407 in (Heywood 1988, computed apart)", () => {
    checkClose(liftWhereGapReachesThroat(inchValve), 0.4549407, 1e-7);
  });

  test("is where the gap area stops rising, for any valve", () => {
    fc.assert(
      fc.property(anyValve, (valve) => {
        const lift = liftWhereGapReachesThroat(valve) ?? Number.NaN;
        const throat = throatArea(valve.throat, valve.stem) ?? Number.NaN;
        checkClose(gapArea(valve, lift), throat, 1e-9);
        expect(gapArea(valve, lift * 0.999)).toBeLessThan(throat);
      }),
    );
  });
});

describe("simple areas", () => {
  test("curtain equals head at a quarter of its diameter", () => {
    checkClose(curtainArea(0.04, 0.01), headArea(0.04), 1e-15);
    checkClose(curtainArea(40, 1), 125.66371, 1e-7);
  });

  test("curtain equals throat less stem at 0.37770 in of a 2.02 in valve (computed apart)", () => {
    checkClose(curtainArea(2.02, 0.3777), throatArea(1.78, 0.3415) ?? 0, 2e-5);
  });

  test("throat needs to be wider than its stem", () => {
    expect(throatArea(0.007, 0.007)).toBeUndefined();
    checkClose(throatArea(0.035, 0.007), 923.62824e-6, 1e-8);
  });
});
