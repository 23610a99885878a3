import { describe, expect, test } from "vitest";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { checkRecord, codesOf, findingOf, HEAD, record } from "../kit/check-record.ts";

/** A record of runs; each is what it states and its rows. The bench repeats to 0.4 %. */
function stage(...runs: readonly (readonly [states: string, ...rows: string[]])[]): string {
  const [[first, ...firstRows] = ["", ""], ...others] = runs;
  const texts = others.map(([states, ...rows], index) =>
    [`run r${index + 2}`, ...states.split("; "), HEAD, ...rows].join("\n"),
  );
  return [record({ run: first.split("; "), rows: firstRows }), ...texts].join("\n");
}

const isApart = (text: string, limit = 0.02): boolean => {
  const config = { ...DEFAULT_CONFIG, limits: { ...DEFAULT_CONFIG.limits, cylinders: limit } };
  return codesOf(text, config).includes("cylinders-apart");
};

describe("cylinders of one stage", () => {
  test("are apart where they differ by more than the limit, marked at the lower one", () => {
    checkRecord(
      stage(
        ["cylinder 1", "0.300 28.0 150.0"],
        ["cylinder 2", "0.300 28.0 146.0", "#<^^^^^^^^^^^^^^ warning[cylinders-apart]"],
      ),
    );
  });

  test("are to be read again as they were mounted: an exhaust has a stub", () => {
    const intake = stage(["cylinder 1", "0.300 28.0 150.0"], ["cylinder 2", "0.300 28.0 146.0"]);
    const exhaust = intake.replace("side intake", "side exhaust").replace("entry radiused", "stub none");
    expect(findingOf(intake, "cylinders-apart").help).toContain("with the same adapter and entry;");
    expect(findingOf(exhaust, "cylinders-apart").help).toContain("with the same adapter and stub;");
  });

  test("are apart only beyond the limit that the workspace sets, and beyond what the bench repeats to", () => {
    // 4/148 = 2.7 %; chance gives 1.96 · 0.4 % · sqrt 2 = 1.1 %.
    const text = stage(["cylinder 1", "0.300 28.0 150.0"], ["cylinder 2", "0.300 28.0 146.0"]);
    expect([0.02, 0.028].map((limit) => isApart(text, limit))).toEqual([true, false]);
    // 1.2/149.4 = 0.8 %, within chance.
    expect(
      isApart(stage(["cylinder 1", "0.300 28.0 150.0"], ["cylinder 2", "0.300 28.0 148.8"]), 0.005),
    ).toBe(false);
  });

  test("are one finding, at the lift where they are furthest apart", () => {
    const text = stage(
      ["cylinder 1", "0.200 28.0 108.0", "0.300 28.0 150.0"],
      ["cylinder 2", "0.200 28.0 108.1", "0.300 28.0 149.0"],
      ["cylinder 3", "0.200 28.0 105.0", "0.300 28.0 144.0"],
    );
    const { message, help, finding } = findingOf(text, "cylinders-apart");
    expect(message).toMatch(
      /^cylinders 3 and 1 flow 4\.1 % apart at 0\.300 in \(144 cfm and 150 cfm; the limit/,
    );
    expect(message).toContain(", and at 1 more of 2 lifts");
    expect(help).toContain("bring cylinder 3 up to 1");
    expect(finding.related.map((place) => place.message)).toEqual(["cylinder 1"]);
  });

  test("are not compared over stages, over ways of blowing, or with runs of no cylinder", () => {
    const low = "0.300 28.0 140.0";
    const high = "0.300 28.0 150.0";
    expect(isApart(stage([`cylinder 1; stage "a"`, high], [`cylinder 2; stage "b"`, low]))).toBe(false);
    expect(isApart(stage(["cylinder 1", high], ["cylinder 2; direction blows", low]))).toBe(false);
    expect(isApart(stage(["cylinder 1", high], ["cylinder 2; quote 25 inH2O", low]))).toBe(false);
    expect(isApart(stage(["cylinder 1", high], [`stage "a"`, low]))).toBe(false);
    expect(isApart(stage(["cylinder 1", high], ["cylinder 1", low]))).toBe(false);
    expect(isApart(stage([`cylinder 1; stage "a"`, high], [`cylinder 2; stage "a"`, low]))).toBe(true);
  });
});
