import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expanded, type Means, meansOf, type StationTerms } from "../../../shared/calc/stations.ts";
import { evaluateRun } from "../../kit/evaluate.ts";
import { smallRecord } from "../sample-record.ts";
import { checkClose } from "./close.ts";

const TERMS: StationTerms = { deviation: 0.005, liftSetting: 0.001, scale: 0 };
const INCH = 0.0254;
const CFM = 4.719474432e-4;

type Reading = readonly [lift: number, flow: number];

/** The means of readings that all count. */
function means(readings: readonly Reading[]): Means {
  return meansOf([...readings.keys()], {
    lift: readings.map(([lift]) => lift),
    corrected: readings.map(([, flow]) => flow),
  });
}

/** Lift, flow and the places of the rows of each station. */
function brief({ lift, flow, rows, end }: Means): readonly unknown[] {
  return lift.map((each, at) => [
    each,
    flow[at],
    end === undefined ? [rows[at]] : rows.slice(end[at - 1] ?? 0, end[at]),
  ]);
}

describe("the stations of a branch", () => {
  test("average the rows of one lift, arithmetically, and stand by rising lift", () => {
    expect(
      brief(
        means([
          [0.2, 100],
          [0.1, 50],
          [0.2, 103],
          [0.2, 97],
        ]),
      ),
    ).toEqual([
      [0.1, 50, [1]],
      [0.2, 100, [0, 2, 3]],
    ]);
  });

  test("are the rows themselves where each lift was read once, in whatever order", () => {
    expect(
      brief(
        means([
          [0.3, 140],
          [0.1, 50],
          [0.2, 100],
        ]),
      ),
    ).toEqual([
      [0.1, 50, [1]],
      [0.2, 100, [2]],
      [0.3, 140, [0]],
    ]);
  });

  test("are of the rows that they are asked for, and of none are none", () => {
    const columns = { lift: [0.1, 0.2, 0.2, 0.3], corrected: [50, Number.NaN, 101, 140] };
    expect(brief(meansOf([0, 2, 3], columns))).toEqual([
      [0.1, 50, [0]],
      [0.2, 101, [2]],
      [0.3, 140, [3]],
    ]);
    expect(brief(meansOf([], columns))).toEqual([]);
  });

  test("leave out the other branch, and rows without lift or flow", () => {
    const { rising, falling } = evaluateRun(
      smallRecord({ rows: ["0.1 28 50", "- 28 100", "0.3 28 140", "0.4 28 -", "0.2 28 90"] }),
    );
    expect(rising.map(({ lift }) => Math.round((lift / INCH) * 10))).toEqual([1, 3]);
    expect(falling.map(({ lift }) => Math.round((lift / INCH) * 10))).toEqual([2]);
  });

  test("have the slope of a central difference, one-sided at the ends (worked by hand)", () => {
    const { rising } = evaluateRun(smallRecord({ rows: ["0.1 28 50", "0.2 28 90", "0.4 28 130"] }));
    for (const [at, expected] of [400, 800 / 3, 200].entries()) {
      checkClose(rising[at]?.slope, (expected * CFM) / INCH, 1e-9);
    }
  });
});

describe("the uncertainty of a station (JCGM 100:2008, 5.1.2, worked by hand)", () => {
  test("adds repeatability over the readings, written numbers, lift setting on the slope, and scale", () => {
    // (0.8 %)²/4 + (0.3 %)² + (20 · 0.01/100)² + (0.6 %)², all relative: 16 + 9 + 4 + 36 = 65, in (0.1 %)²
    const terms = { deviation: 0.008, liftSetting: 0.01, scale: 0.006 };
    checkClose(expanded(100, 20, 0.003 ** 2, 4, terms), 2 * Math.sqrt(65) * 1e-3, 1e-12);
  });

  test("of several readings has their mean variance of written numbers, which repeats do not average away", () => {
    const rows = ["0.2 28.0000 100", "0.2 28.0000 100"];
    const { rising } = evaluateRun(smallRecord({ bench: ["shows flow", "repeat 0.0001 %"], rows }));
    // A last digit of 1 cfm in 100, as a rectangle.
    checkClose(rising[0]?.uncertainty, (2 * 0.01) / Math.sqrt(12), 1e-4);
  });

  test("is finite where no air flows", () => {
    expect(Number.isFinite(expanded(0, 500, 0, 1, TERMS))).toBe(true);
  });
});

describe("laws of averaging", () => {
  const readings = fc.array(fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 500 })), {
    maxLength: 20,
  });

  function checkSameMeans(some: Means, others: Means): void {
    expect(some.lift).toEqual(others.lift);
    some.flow.forEach((flow, at) => {
      checkClose(flow, others.flow[at] ?? Number.NaN, 1e-12);
    });
  }

  test("the order of rows does not matter, beyond rounding", () => {
    fc.assert(
      fc.property(readings, (there) => {
        checkSameMeans(means([...there].reverse()), means(there));
      }),
    );
  });

  test("taking every reading twice changes no mean, and no reading makes a station worse known", () => {
    fc.assert(
      fc.property(readings, (once) => {
        checkSameMeans(means(once.flatMap((reading) => [reading, reading])), means(once));
      }),
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        (count, flow) => {
          const uncertainty = (readings: number) => expanded(flow, 20, 1e-6, readings, TERMS);
          expect(uncertainty(count + 1)).toBeLessThanOrEqual(uncertainty(count));
        },
      ),
    );
  });
});
