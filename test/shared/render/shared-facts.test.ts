import { describe, expect, test } from "vitest";
import { sharedFacts } from "../../../shared/render/shared-facts.ts";
import { runsOf, runText } from "../../kit/chart.ts";

function wordsOf(text: string, labels: readonly string[]) {
  const runs = runsOf(text).map((result, at) => ({ result, label: labels[at] ?? "" }));
  return Object.fromEntries(sharedFacts(runs).map(({ label, words }) => [label, words]));
}

describe("what several runs stand on", () => {
  test("is told once where it holds for all, and cylinders are not told by what they are called", () => {
    const text = [1, 2, 3].map((at) => runText(`i${at}`, [58.4], `  cylinder ${at}\n`)).join("");
    const { port, leak, bench } = wordsOf(text, ["cylinder 1", "cylinder 2", "cylinder 3"]);
    expect(port).toBe("p, intake, draws");
    expect(leak).toBe("none");
    expect(bench).toBe("north, repeats to 0.35 %");
  });

  test("is told with those that differ, the ones that are alike together", () => {
    const warm = "  air 80 degF 29.18 inHg 42 %RH\n";
    const text = `${runText("a", [58.4])}${runText("b", [58.5], warm)}${runText("c", [58.6], `${warm}  stage "cut"\n`)}`;
    const { air, stage } = wordsOf(text, ["a", "b", "c"]);
    expect(air).toMatch(
      /^29\.18 inHg, 42 %RH; differs: 71\.5 degF, 1\.\d+ kg\/m3 \(a\), 80 degF, 1\.\d+ kg\/m3 \(b, c\)$/,
    );
    expect(stage).toBe("differs: not stated (a, b), cut (c)");
  });

  test("of one run is what it stands on", () => {
    expect(wordsOf(runText("a", [58.4], "  cylinder 2\n"), ["a"])["port"]).toBe(
      "p, intake, cylinder 2, draws",
    );
  });
});
