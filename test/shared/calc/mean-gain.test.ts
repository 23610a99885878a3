import { describe, expect, test } from "vitest";
import { gains } from "../../../shared/calc/gain.ts";
import { meanGain } from "../../../shared/calc/mean-gain.ts";
import { evaluateText } from "../../kit/evaluate.ts";
import { checkClose } from "./close.ts";

const HEAD = "lift[in]  depression[inH2O]  flow[cfm]";
const BENCH = "bench b\n  shows flow\n  repeat 0.5 %";

function pair(was: string, is: string, benches = BENCH, own = "") {
  const { runs } = evaluateText(`${benches}
session 2026-03-02
  bench b
run was
  ${HEAD}
${was}
run is
  ${own}
  ${HEAD}
${is}
`);
  const [baseline, result] = runs;
  if (baseline === undefined || result === undefined) throw new RangeError("two runs are wanted");
  return { baseline, result };
}

const meanOf = (...given: Parameters<typeof pair>) => {
  const { baseline, result } = pair(...given);
  return meanGain(result, baseline);
};

describe("the mean gain", () => {
  test("is that of the means over lift of the stations that both have", () => {
    // Trapezoids by hand: (100+200)/2 = 150 and (110+206)/2 = 158; the third lift is not shared.
    const gain = meanOf("0.1 28.0 100.0\n0.2 28.0 200.0", "0.1 28.0 110.0\n0.2 28.0 206.0\n0.3 28.0 300.0");
    checkClose(gain?.gain, 158 / 150 - 1, 1e-9);
    expect(gain?.lifts).toBe(2);
  });

  test("weighs stations by the lift that they stand for", () => {
    // Weights 0.05, 0.15 and 0.1 at 0.1, 0.2 and 0.4: 5 + 30 + 30 = 65 and 5 + 30 + 33 = 68, by hand.
    const rows = (last: string) => `0.1 28.0 100.0\n0.2 28.0 200.0\n0.4 28.0 ${last}`;
    checkClose(meanOf(rows("300.0"), rows("330.0"))?.gain, 68 / 65 - 1, 1e-9);
  });

  test("of one shared lift is the gain there, with its noise", () => {
    const { baseline, result } = pair("0.3 28.0 200.0", "0.3 28.0 206.0\n0.4 28.0 220.0");
    const [there] = gains(result, baseline);
    const mean = meanGain(result, baseline);
    expect(mean?.lifts).toBe(1);
    checkClose(mean?.gain, there?.gain ?? 0, 1e-12);
    checkClose(mean?.noise, there?.noise ?? 0, 1e-12);
  });

  test("is known better than that of one reading, since readings err independently", () => {
    // Equal flows at three equal steps: weights 1/4, 1/2, 1/4, so sqrt(6)/4 of 1.96 sqrt 2 s, by hand.
    const rows = "0.1 28.0 100.0\n0.2 28.0 100.0\n0.3 28.0 100.0";
    checkClose(meanOf(rows, rows)?.noise, (Math.sqrt(6) / 4) * 1.96 * Math.SQRT2 * 0.005, 1e-9);
  });

  test("between two benches is no better known than their scales, however many readings", () => {
    const scaled = (id: string) => `bench ${id}\n  shows flow\n  repeat 0.0001 %\n  uncertainty 2 %`;
    const rows = "0.1 28.0 100.0\n0.2 28.0 100.0\n0.3 28.0 100.0";
    // 1.96 sqrt(1² + 1²) %, by hand.
    checkClose(meanOf(rows, rows, `${scaled("b")}\n${scaled("c")}`, "bench c")?.noise, 0.0277186, 1e-4);
  });

  test("is not there without a shared lift, or between depressions that differ", () => {
    expect(meanOf("0.1 28.0 100.0", "0.2 28.0 100.0")).toBeUndefined();
    expect(meanOf("0.1 28.0 100.0", "0.1 28.0 100.0", BENCH, "quote 25 inH2O")).toBeUndefined();
  });
});
