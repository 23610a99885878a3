import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leakAt, scaleToDepression, theoreticalVelocity } from "../../../shared/calc/depression.ts";
import { checkClose } from "./close.ts";

const positive = fc.double({ min: 0.01, max: 1000, noNaN: true });

describe("flow at another depression", () => {
  test.each([
    [3, 3.0550505],
    [10, 1.6733201],
    [15, 1.3662601],
    [20, 1.183216],
    [25, 1.0583005],
    [27.8, 1.0035907],
    [36, 0.8819171],
  ])("from %d to 28 inH2O grows by %d (square root, computed apart)", (from, expected) => {
    checkClose(scaleToDepression(1, from, 28), expected, 1e-7);
  });

  test("240 cfm at 25 inH2O in thinner air is 246.81491448 at 28 in standard air (computed apart)", () => {
    const atSameAir = scaleToDepression(240, 25, 28) ?? 0;
    checkClose(atSameAir * Math.sqrt(1.156747 / 1.225), 246.81491448, 1e-9);
  });

  test("comes back the same way, and over a depression between", () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, (flow, from, between, to) => {
        const there = scaleToDepression(flow, from, to) ?? 0;
        checkClose(scaleToDepression(there, to, from), flow, 1e-12);
        checkClose(scaleToDepression(scaleToDepression(flow, from, between) ?? 0, between, to), there, 1e-12);
      }),
    );
  });

  test("is not computed for a depression that is not positive", () => {
    expect(scaleToDepression(100, 0, 28)).toBeUndefined();
    expect(scaleToDepression(100, 28, -1)).toBeUndefined();
  });
});

describe("leak", () => {
  test.each([
    [0.5, 6.69328021],
    [0.65, 7.81110924],
    [1, 11.2],
  ])("of 4.0 at 10 inH2O with exponent %d is %d at 28 (power law, computed apart)", (exponent, expected) => {
    checkClose(leakAt(4, 10, 28, exponent), expected, 1e-8);
  });

  test("of a hole scales as flow does", () => {
    fc.assert(
      fc.property(positive, positive, positive, (leak, from, to) => {
        checkClose(leakAt(leak, from, to), scaleToDepression(leak, from, to) ?? 0, 1e-12);
      }),
    );
  });

  test("is not computed for a depression that is not positive", () => {
    expect(leakAt(4, 0, 28)).toBeUndefined();
    expect(leakAt(4, 10, 0)).toBeUndefined();
  });
});

describe("theoretical velocity", () => {
  test("at 28 inH2O is 106.70951973 m/s in standard air (computed apart)", () => {
    checkClose(theoreticalVelocity(28 * 249.08891, 1.225), 106.70951973, 1e-9);
    checkClose((theoreticalVelocity(28 * 249.08891, 1.225) ?? 0) / 0.3048, 350.09684949, 1e-9);
  });

  test("is zero without depression and nothing without air", () => {
    expect(theoreticalVelocity(0, 1.2)).toBe(0);
    expect(theoreticalVelocity(-1, 1.2)).toBeUndefined();
    expect(theoreticalVelocity(100, 0)).toBeUndefined();
  });
});
