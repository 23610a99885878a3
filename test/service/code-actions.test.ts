import { describe, expect, test } from "vitest";
import { codeActions, mendAll } from "../../server/service/code-actions.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { findingsOf } from "../../server/service/findings.ts";
import { edited, open } from "../kit/service.ts";

/** The file after the first preferred action for its findings. */
function mended(text: string): string {
  const { analysis, findings } = open(text);
  const action = codeActions(analysis, findings, 0, 1000).find(({ isPreferred }) => isPreferred);
  return action === undefined ? text : edited(text, action.edits);
}

function codes(text: string): readonly string[] {
  const { analysis } = open(text);
  return findingsOf(analysis, DEFAULT_CONFIG).map(({ finding }) => finding.code);
}

const SESSION =
  "headnote 1\nbench b\n  shows flow\n  repeat 0.4 %\nsession 2026-03-02\n  bench b\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\nrun r\n  lift[in] depression[inH2O] flow[cfm]\n  0.1 28.0 55.0\n";

describe("quick fixes", () => {
  test.each([
    ["missing-line", "headnote 1\nbench b\n"],
    ["no-leak", SESSION.replace("  leak none\n", "")],
    ["no-target", SESSION.replace("  target 28 inH2O\n", "")],
    ["no-air", SESSION.replace("  air 20 degC 1000 hPa 40 %RH\n", "")],
    ["no-bench", SESSION.replace("  bench b\n", "")],
    ["unused-allow", "headnote 1\nbench b\n  shows flow # allow no-leak: x\n"],
    ["repeated-line", "headnote 1\nplate p\n  diameter 2 in\n  diameter 3 in\n"],
    ["missing-cell", `${SESSION}  0.2 28.0\n`],
    ["decimal-comma", "headnote 1\nplate p\n  diameter 2,5 in\n"],
  ])("mend %s", (code, text) => {
    expect(codes(text)).toContain(code);
    expect(codes(mended(text))).not.toContain(code);
  });

  test("mend all of a kind, and all that can be mended", () => {
    const text = "headnote 1\nplate p\n  diameter 2,5 in\nplate q\n  diameter 3,5 imch\n";
    const { analysis, findings } = open(text);
    const all = codeActions(analysis, findings, 0, 100).find(
      ({ title }) => title === "Mend all decimal-comma in this file",
    );
    expect(codes(edited(text, all?.edits ?? []))).toEqual(["unknown-unit"]);
    expect(codes(edited(text, mendAll(analysis, findings)))).toEqual([]);
  });

  test("silence a finding where it stands, with room for the reason", () => {
    const text = "headnote 1\nbench b\n";
    const { analysis, findings } = open(text);
    const allow = codeActions(analysis, findings, 1, 1).find(({ title }) => title.startsWith("Allow"));
    expect(edited(text, allow?.edits ?? [])).toBe("headnote 1\n# allow missing-line: \nbench b\n");
    expect(codes(edited(text, allow?.edits ?? []))).toEqual([]);
  });
});
