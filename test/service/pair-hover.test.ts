import { describe, expect, test } from "vitest";
import { hover } from "../../server/service/hover.ts";
import { open } from "../kit/service.ts";
import { runsText } from "../kit/two-runs.ts";

const points = (factor: number) =>
  ([0.1, 0.2, 0.3] as const).map((lift, index) => [lift, (55 + 50 * index) * factor, 1 + index] as const);

/** The hover of the heading of the second run. */
function hovered(text: string): string {
  const { analysis, position } = open(text.replace("run r2", "ru$0n r2"));
  return (hover(analysis, position)?.text ?? "").replaceAll("\\", "");
}

describe("hover of a run's heading", () => {
  test("tells the gain over its baseline in the words of the command", () => {
    const text = runsText([{ points: points(1) }, { points: points(1.05), lines: ["baseline r1"] }]);
    expect(hovered(text)).toContain("**r2 over r1**");
    expect(hovered(text)).toMatch(
      /- mean: .* cfm, \+5\.0 % \(chance ±0\.7 %\) over lift 0\.100 to 0\.300 in/,
    );
  });

  test("names what differs where the two were not read alike, and tells no gain", () => {
    const text = runsText([
      { points: points(1) },
      { points: points(1.05), lines: ["baseline r1", "entry bare"] },
    ]);
    expect(hovered(text)).toContain("not comparable: entry (bare, there clay)");
    expect(hovered(text)).not.toContain("- mean");
  });

  test("lays the same stage on another bench beside it, unasked and once", () => {
    const text = runsText([
      { points: points(1) },
      { points: points(1.01), bench: "south", lines: ["baseline r1"] },
    ]);
    const shown = hovered(text);
    expect(shown.match(/\*\*r2 over r1\*\*/g)).toHaveLength(1);
    expect(shown).toContain("- scale: south reads 1.0100 of north");
    expect(shown).toContain("- agreement: within their uncertainties at all 3 lifts (|En| ≤ 1)");
    expect(shown).toContain("- settle: north 2 s at the median, 1 s to 3 s; south 2 s at the median");
  });

  test("says nothing of a run that stands alone", () => {
    const text = runsText([{ points: points(1) }, { points: points(1), lines: ["cylinder 2"] }]);
    expect(hovered(text)).not.toContain(" over ");
  });
});
