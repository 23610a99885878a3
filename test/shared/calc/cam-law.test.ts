import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CamLaw,
  type CurvePoint,
  camLaws,
  type EventPoint,
  eventMean,
  riseLaw,
  sampleEvent,
  valveLift,
} from "../../../shared/calc/cam-law.ts";
import { gapArea, headArea } from "../../../shared/calc/valve-geometry.ts";
import { checkClose } from "./close.ts";

const anyLaw = fc.constantFrom(...camLaws);
const share = fc.double({ min: 0, max: 1, noNaN: true });

const effectiveAreas: readonly CurvePoint[] = [0, 55, 112, 170, 225, 275, 318, 352, 378, 396, 408, 415].map(
  (value, lift) => ({ lift, value }),
);

function checkRise(x: number, law: CamLaw, expected: number) {
  checkClose(riseLaw(law, x), expected, 2e-7 / Math.min(1, expected * 10));
}

describe("rise laws", () => {
  test("at a quarter and a tenth of the rise (closed form, computed apart)", () => {
    checkRise(0.25, "harmonic", 0.14644661);
    checkRise(0.25, "cycloidal", 0.09084506);
    checkRise(0.25, "p345", 0.10351562);
    checkRise(0.25, "p4567", 0.07055664);
    checkRise(0.1, "harmonic", 0.02447174);
    checkRise(0.1, "cycloidal", 0.00645107);
    checkRise(0.1, "p345", 0.00856);
    checkRise(0.1, "p4567", 0.002728);
  });

  test("rise from 0 to 1 without falling and never beyond", () => {
    fc.assert(
      fc.property(anyLaw, share, share, (law, a, b) => {
        const low = riseLaw(law, Math.min(a, b));
        const high = riseLaw(law, Math.max(a, b));
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeGreaterThanOrEqual(low - 1e-14);
        expect(high).toBeLessThanOrEqual(1);
        expect(riseLaw(law, 0)).toBe(0);
        expect(riseLaw(law, 1)).toBe(1);
      }),
    );
  });

  test("are the same turned about their middle", () => {
    fc.assert(
      fc.property(anyLaw, share, (law, x) => {
        expect(riseLaw(law, x) + riseLaw(law, 1 - x)).toBeCloseTo(1, 12);
      }),
    );
  });

  test("stay at their ends outside the rise", () => {
    expect(riseLaw("harmonic", -0.5)).toBe(0);
    expect(riseLaw("harmonic", 1.5)).toBe(1);
  });
});

describe("valve lift", () => {
  test("is full in the middle, zero at the ends, and the same on both flanks", () => {
    fc.assert(
      fc.property(anyLaw, share, (law, x) => {
        expect(valveLift(law, 11, 0.5)).toBe(11);
        expect(valveLift(law, 11, 0)).toBe(0);
        expect(valveLift(law, 11, 1)).toBe(0);
        expect(valveLift(law, 11, x)).toBeCloseTo(valveLift(law, 11, 1 - x), 10);
      }),
    );
  });
});

describe("mean over an event", () => {
  test.each([
    ["harmonic", 248.74598],
    ["cycloidal", 241.42452],
    ["p345", 243.08883],
    ["p4567", 238.7192],
  ] as const)("of a measured effective area, %s: %d mm2 (computed apart with numpy)", (law, expected) => {
    checkClose(eventMean(sampleEvent(law, 11), effectiveAreas), expected, 1e-6);
  });

  test("over the area of a 40 mm head is a flow coefficient of 0.197946 (computed apart with numpy)", () => {
    const mean = eventMean(sampleEvent("harmonic", 11), effectiveAreas) ?? 0;
    checkClose(mean / headArea(40), 0.197946, 3e-6);
  });

  test.each([
    ["harmonic", 506.46429],
    ["cycloidal", 499.32748],
    ["p345", 500.88156],
    ["p4567", 496.44478],
  ] as const)("of the gap area of a 40 mm valve, %s: %d mm2 (computed apart with numpy)", (law, expected) => {
    const valve = { head: 40, seatAngle: Math.PI / 4, seatWidthProjected: 1.5, throat: 35, stem: 7 };
    const gap = Array.from({ length: 1101 }, (_, step) => ({
      lift: step / 100,
      value: gapArea(valve, step / 100) ?? 0,
    }));
    checkClose(eventMean(sampleEvent(law, 11), gap), expected, 2e-6);
  });

  test("of lift itself is half the peak for every law", () => {
    fc.assert(
      fc.property(anyLaw, fc.double({ min: 1, max: 11, noNaN: true }), (law, peak) => {
        const lift = effectiveAreas.map((point) => ({ lift: point.lift, value: point.lift }));
        checkClose(eventMean(sampleEvent(law, peak), lift), peak / 2, 1e-9);
      }),
    );
  });

  test("takes a table of lift on angle with straight lines between", () => {
    const triangle: EventPoint[] = [
      { angle: -1, lift: 0 },
      { angle: 0, lift: 4 },
      { angle: 1, lift: 0 },
    ];
    // The areas at 0, 1, 2, 3, 4 mm by the trapezium rule, by hand: (0/2 + 55 + 112 + 170 + 225/2) / 4.
    checkClose(eventMean(triangle, effectiveAreas), 449.5 / 4, 1e-14);
  });

  test("does not depend on where the table has extra points on its straight lines", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), (at) => {
        const plain = [
          { angle: 0, lift: 0 },
          { angle: 1, lift: 7.5 },
          { angle: 3, lift: 0 },
        ];
        const [first, ...rest] = plain;
        const refined = first ? [first, { angle: at, lift: 7.5 * at }, ...rest] : [];
        checkClose(eventMean(refined, effectiveAreas), eventMean(plain, effectiveAreas) ?? 0, 1e-12);
      }),
    );
  });

  test("leaves out the time on the seat and the lash", () => {
    const table = [
      { angle: -3, lift: -1 },
      { angle: -2, lift: -1 },
      { angle: 0, lift: 3 },
      { angle: 2, lift: -1 },
      { angle: 5, lift: -1 },
    ];
    const clean = [
      { angle: -1.5, lift: 0 },
      { angle: 0, lift: 3 },
      { angle: 1.5, lift: 0 },
    ];
    checkClose(eventMean(table, effectiveAreas), eventMean(clean, effectiveAreas) ?? 0, 1e-14);
  });

  test("lies between the least and the greatest value passed", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 11, noNaN: true }), { minLength: 2, maxLength: 40 }),
        (lifts) => {
          const mean = eventMean(
            lifts.map((lift, angle) => ({ angle, lift })),
            effectiveAreas,
          );
          if (Math.max(...lifts) === 0) expect(mean).toBeUndefined();
          else {
            expect(mean).toBeGreaterThanOrEqual(0);
            expect(mean).toBeLessThanOrEqual(415);
          }
        },
      ),
    );
  });

  test("is not computed beyond the last station, but for the rounding of units", () => {
    expect(eventMean(sampleEvent("harmonic", 11.01), effectiveAreas)).toBeUndefined();
    expect(eventMean(sampleEvent("harmonic", 11 * (1 + 1e-15)), effectiveAreas)).toBeTypeOf("number");
  });

  test("is not computed without stations, without an event, or out of order", () => {
    const backwards = [...effectiveAreas].reverse();
    expect(eventMean(sampleEvent("harmonic", 5), [])).toBeUndefined();
    expect(eventMean([], effectiveAreas)).toBeUndefined();
    expect(eventMean([{ angle: 0, lift: 1 }], effectiveAreas)).toBeUndefined();
    expect(eventMean(sampleEvent("harmonic", 5), backwards)).toBeUndefined();
    expect(eventMean([...sampleEvent("p345", 5)].reverse(), effectiveAreas)).toBeUndefined();
  });
});
