import { describe, expect, test } from "vitest";
import { type Gain, gains, isWithinNoise } from "../../../shared/calc/gain.ts";
import { open } from "../../kit/service.ts";
import { checkClose } from "./close.ts";

const HEAD = "lift[in]  depression[inH2O]  flow[cfm]";

function gainsOf(
  was: string,
  is: string,
  benches = "bench b\n  shows flow\n  repeat 0.25 %",
): readonly Gain[] {
  const { analysis } = open(`headnote 1
${benches}
session 2026-03-02
  bench b
run was
  ${HEAD}
${was}
run is
  ${is.includes("[") ? "" : HEAD}
${is}
`);
  const [baseline, result] = analysis.runs;
  return baseline && result ? gains(result.result, baseline.result) : [];
}

describe("a gain", () => {
  test("is what the second run flows more, of the first", () => {
    const [gain] = gainsOf("0.300 28.0 200.0", "0.300 28.0 206.0");
    checkClose(gain?.gain, 0.03, 1e-12);
  });

  // 1.96 sqrt 2 s and 1.96 sqrt(2/3) s with s = 0.25 %: ASTM E691 and ISO 5725-2, limits of two results.
  test.each([
    [1, 0.0069296],
    [3, 0.0040008],
  ])("of means of %i readings is noise up to the limit of two results", (readings, limit) => {
    const rows = (flow: string) => Array.from({ length: readings }, () => `0.300 28.0 ${flow}`).join("\n");
    const [gain] = gainsOf(rows("200.0"), rows("200.0"));
    checkClose(gain?.noise, limit, 1e-4);
    expect(gain && isWithinNoise(gain)).toBe(true);
  });

  test("is there only for lifts that both have, in inches or millimetres", () => {
    const found = gainsOf(
      "0.300 28.0 200.0\n0.400 28.0 230.0",
      "lift[mm] depression[inH2O] flow[cfm]\n10.16 28.0 233.0\n12.7 28.0 240.0",
    );
    expect(found.map(({ station }) => station.rows[0]?.row.values[0])).toEqual([10.16]);
  });

  test("compares rising with rising and falling with falling rows", () => {
    const sweep = (back: string) => `0.300 28.0 200.0\n0.400 28.0 230.0\n0.300 28.0 ${back}`;
    expect(gainsOf(sweep("190.0"), sweep("209.0")).map(({ gain }) => Math.round(gain * 1000))).toEqual([
      0, 0, 100,
    ]);
  });

  test("is not given between depressions that differ", () => {
    const was = "0.300 28.0 200.0";
    const { analysis } = open(
      `headnote 1\nrun was\n  quote 28 inH2O\n${HEAD}\n${was}\nrun is\n  quote 25 inH2O\n${HEAD}\n${was}\n`,
    );
    const [baseline, result] = analysis.runs;
    expect(baseline && result && gains(result.result, baseline.result)).toEqual([]);
  });
});
