import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { curveAt, curveUncertainty } from "../../../shared/calc/curve-at.ts";
import { known, stations } from "../../kit/stations.ts";
import { checkClose } from "./close.ts";

const half = known(0.005);

describe("a curve at a lift", () => {
  test("is a station's mean where it was read", () => {
    const at = curveAt(stations([50, 100], [1, 4]), 2, half);
    expect(at).toMatchObject({ flow: 100, isRead: true, bend: 0 });
    checkClose(at?.spread, 0.0025, 1e-12);
  });

  test("is the same station in inches and millimetres", () => {
    const inches = stations([50, 100]).map((station) => ({ ...station, lift: station.lift * 0.0254 }));
    expect(curveAt(inches, 0.0508 + 5e-8, half)?.isRead).toBe(true);
    expect(curveAt(inches, 0.0508 - 5e-8, half)?.isRead).toBe(true);
    expect(curveAt(inches, 0.0508 - 5e-7, half)?.isRead).toBe(false);
  });

  test("is not there beyond its first and last station", () => {
    const curve = stations([50, 100]);
    expect(curveAt(curve, 0.5, half)).toBeUndefined();
    expect(curveAt(curve, 2.5, half)).toBeUndefined();
    expect(curveAt([], 1, half)).toBeUndefined();
  });

  test("is on the straight line in between, and as sure as the two stations leave it", () => {
    const at = curveAt(stations([100, 120]), 1.25, half);
    expect(at?.flow).toBe(105);
    // sqrt((0.75 · 100)^2 + (0.25 · 120)^2) · 0.5 %/105 = 0.38465 %, by hand; two stations say nothing of a bend.
    checkClose(at?.spread, 0.0038465, 1e-4);
  });

  test("is less sure by what the curve bends: f''/2 · (x - a)(b - x)/√3 for a parabola, which is the error itself over √3", () => {
    const parabola = (lift: number) => 200 - 10 * (lift - 4) ** 2;
    const curve = stations([1, 2, 3, 4].map(parabola));
    fc.assert(
      fc.property(fc.double({ min: 1.01, max: 3.99, noNaN: true }), (lift) => {
        const at = curveAt(curve, lift, half);
        if (at === undefined || at.isRead) return;
        const error = parabola(lift) - at.flow;
        checkClose(at.bend * at.flow * Math.sqrt(3), error, 1e-6);
      }),
    );
  });

  test("splits its uncertainty in what a lift has of its own and what all share, without the bench's scale", () => {
    const [station] = stations([100]);
    if (station === undefined) throw new RangeError("a station is wanted");
    const row = station.rows[0];
    if (row === undefined) throw new RangeError("a row is wanted");
    // (2 %/2)^2 = 0.0036 % + 0.0036 % + 0.0028 %, by hand: 0.6 % shared, 0.6 % scale, sqrt(0.28e-4) of its own.
    const made = { ...station, uncertainty: 0.02, rows: [{ ...row, variance: 0.006 ** 2 }] };
    const at = curveAt([made], 1, half);
    const found = at && curveUncertainty(at, 0.006);
    checkClose(found?.shared, 0.006, 1e-12);
    checkClose(found?.own, Math.sqrt(0.28e-4), 1e-9);
  });
});
