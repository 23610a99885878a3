import { describe, expect, test } from "vitest";
import { hover } from "../../server/service/hover.ts";
import { open, shopRecord } from "../kit/service.ts";

const hovered = (fixture: string) => {
  const { analysis, position } = open(fixture);
  return hover(analysis, position)?.text ?? "";
};
const atRun = (lines: string) => hovered(shopRecord(lines).replace("run i1\n", `ru$0n i1\n`));

describe("hover of a run's heading", () => {
  test("lists every settled value with the place that it came from", () => {
    const list = atRun("     0.100  28.0  55.0\n")
      .split("\n")
      .filter((line) => line.startsWith("- "));
    expect(list.map((line) => line.replaceAll("\\", ""))).toEqual([
      "- port: intake, intake, draws *(session, port)*",
      "- date: 2026-03-02 *(session)*",
      expect.stringMatching(/^- air: 71\.5 degF, 29\.18 inHg, 42 %RH, 1\.1\d+ kg\/m3 \*\(session\)\*$/),
      "- leak: 0.8 cfm at 28 inH2O *(session)*",
      "- mounting: entry radiused *(session)*",
      "- target: 28 inH2O *(session)*",
      "- within: 0.2 inH2O *(bench)*",
      "- reference air: none",
      "- bench: north *(session)*",
      "- repeatability: 0.35 % *(bench)*",
      "- lift setting: 0.001 in *(default)*",
    ]);
  });

  test("tells a run's own values from its session's", () => {
    const own = shopRecord("     0.100  28.0  55.0\n").replace(
      "run i1\n",
      "run $0i1\n  target 25 inH2O\n  quote 28 inH2O\n  leak none\n",
    );
    const text = hovered(own);
    expect(text).toContain("- target: 25 inH2O *(run)*");
    expect(text).toContain("- quoted at: 28 inH2O *(run)*");
    expect(text).toContain("- leak: none *(run)*");
  });

  test("says what nobody stated, and what is named but not there", () => {
    const text = hovered("headnote 1\nrun $0r\n  bench nowhere\n  lift[in]  depression[inH2O]\n");
    expect(text).toContain("- target: 28 inH2O *(default)*");
    expect(text).toContain("- bench: nowhere not found *(run)*");
    expect(text).toContain("- port: not stated");
  });
});
