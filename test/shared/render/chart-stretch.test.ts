import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ChartOptions } from "../../../shared/render/chart.ts";
import { chartSpec, drawnChart } from "../../../shared/render/chart.ts";
import { unit } from "../../../shared/render/display-units.ts";
import {
  charted,
  dataOf,
  FALLING_BACK,
  notesOf,
  panelsOf,
  runsOf,
  runText,
  textsOf,
} from "../../kit/chart.ts";

const INCH = 0.0254;
const ONE = runText("i1", FALLING_BACK);
const TWO = `${ONE}${runText(
  "i2",
  FALLING_BACK.map((flow) => flow * 1.03),
  "  baseline i1\n",
)}`;

function drawn(text: string, options: ChartOptions) {
  const [main, ...others] = runsOf(text).toReversed();
  if (main === undefined) throw new Error("no run");
  return drawnChart([charted(main), ...others.map((run) => charted(run, "baseline"))], options);
}

const inches = (low: number, high: number): [number, number] => [low * INCH, high * INCH];
const domains = (spec: Readonly<Record<string, unknown>>) =>
  panelsOf(spec).map(({ encoding: { x, y } }) => [x.scale.domain, y.scale.domain] as const);

describe("a part of the lift axis", () => {
  test("is all that is drawn, with a flow axis of its own and a word about that", () => {
    const { spec, lifts } = drawn(ONE, { lifts: inches(0.35, 0.6) });
    expect(dataOf(spec, "points").map(({ x }) => x)).toEqual([0.4, 0.5, 0.6]);
    const [[x, y] = []] = domains(spec);
    expect(x?.map((end) => Number(end.toFixed(9)))).toEqual([0.35, 0.6]);
    expect(y?.[0]).toBeGreaterThan(190);
    expect(notesOf(spec)).toContain("flow need not begin at zero");
    expect(lifts?.whole.map((lift) => Number((lift / INCH).toFixed(9)))).toEqual([0, 0.6]);
    expect(lifts?.shown.map((lift) => Number((lift / INCH).toFixed(9)))).toEqual([0.35, 0.6]);
    expect(textsOf(spec)).toContain("falls back 2.1 %");
  });

  test("has lines that go to its ends, where no reading stands", () => {
    const { spec } = drawn(TWO, { lifts: inches(0.25, 0.45) });
    for (const name of ["flow-lines", "coefficient-lines", "difference-lines"]) {
      const ends = dataOf(spec, name).map(({ x }) => Number(Number(x).toFixed(9)));
      expect([name, Math.min(...ends), Math.max(...ends)]).toEqual([name, 0.25, 0.45]);
    }
    for (const name of ["points", "coefficients", "differences"])
      expect([name, new Set(dataOf(spec, name).map(({ x }) => x))]).toEqual([name, new Set([0.3, 0.4])]);
  });

  test("may lie between two readings", () => {
    const { spec } = drawn(ONE, { lifts: inches(0.31, 0.39) });
    expect(dataOf(spec, "points")).toEqual([]);
    expect(dataOf(spec, "flow-lines")).toHaveLength(2);
  });

  test("is the same part over L/D and in other units", () => {
    const ratio = drawn(ONE, { lifts: inches(0.35, 0.6), xAxis: "lift-ratio" });
    const metric = drawn(ONE, { lifts: inches(0.35, 0.6), units: [unit("mm")] });
    for (const { spec, lifts } of [ratio, metric]) {
      expect(dataOf(spec, "points")).toHaveLength(3);
      expect(lifts?.shown.map((lift) => Number((lift / INCH).toFixed(9)))).toEqual([0.35, 0.6]);
    }
  });

  test.each([
    ["all of it", [0, 0.6]],
    ["more than it", [-1, 5]],
    ["what nothing stands in", [0.01, 0.05]],
    ["what lies beyond it", [3, 4]],
    ["next to nothing", [0.4, 0.4001]],
  ])("that is %s is the whole", (_, [low = 0, high = 0]) => {
    expect(drawn(TWO, { lifts: inches(low, high) })).toEqual(drawn(TWO, {}));
  });

  test("holds everything that is drawn, whatever it is", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 8 }),
        fc.double({ min: -0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        fc.boolean(),
        (flows, low, span, isDown) => {
          const ways = isDown ? [...flows, ...flows.toReversed()] : flows;
          const text = runText(
            "i1",
            ways.map((flow) => flow.toFixed(1)),
          );
          const spec = chartSpec(
            runsOf(text).map((run) => charted(run)),
            { lifts: inches(low, low + span) },
          );
          for (const [at, [x]] of domains(spec).entries()) {
            const names = at === 0 ? ["points", "flow-lines", "falls", "marks"] : [];
            for (const row of names.flatMap((name) => dataOf(spec, name))) {
              for (const end of [row["x"], row["x2"] ?? row["x"]] as number[]) {
                expect(end).toBeGreaterThanOrEqual((x?.[0] ?? 0) - 1e-9);
                expect(end).toBeLessThanOrEqual((x?.[1] ?? 0) + 1e-9);
              }
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
