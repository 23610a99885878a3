import { describe, expect, test } from "vitest";
import { toTextEdit } from "../../server/lsp/to-protocol.ts";
import { codeActions, mendAll } from "../../server/service/code-actions.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { findingsOf, type Judged } from "../../server/service/findings.ts";
import { type Edit, lineTakenOut } from "../../shared/text/edit.ts";
import { edited, open } from "../kit/service.ts";

/** The file after what is offered for its findings of a code, be it a mend or a proposal. */
function mended(text: string, code: string): string {
  const { analysis, findings } = open(text);
  const action = codeActions(analysis, findings, 0, 1000).find(
    ({ mends, title }) => mends?.finding.code === code && !title.startsWith("Allow"),
  );
  return action === undefined ? text : edited(text, action.edits);
}

function codes(text: string): readonly string[] {
  const { analysis } = open(text);
  return findingsOf(analysis, DEFAULT_CONFIG).map(({ finding }) => finding.code);
}

const SESSION =
  "headnote 1\nbench b\n  shows flow\n  repeat 0.4 %\nsession 2026-03-02\n  bench b\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\nrun r\n  lift[in] depression[inH2O] flow[cfm]\n  0.1 28.0 55.0\n";

describe("a line that is taken out", () => {
  test("leaves no blank one behind", () => {
    const plate = "headnote 1\nplate p\n  diameter 2 in\n  diameter 3 in\n  uncertainty 1 %\n";
    expect(mended(plate, "repeated-line")).toBe(plate.replace("  diameter 3 in\n", ""));
    const bench = "headnote 1\n# allow no-leak: x\nbench b\n  shows flow\n";
    expect(mended(bench, "unused-allow")).toBe("headnote 1\nbench b\n  shows flow\n");
  });

  test("ends where the next one begins, as editors are told", () => {
    const { range } = toTextEdit(lineTakenOut(3, 15));
    expect(range).toEqual({ start: { line: 3, character: 0 }, end: { line: 4, character: 0 } });
  });
});

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
    expect(codes(mended(text, code))).not.toContain(code);
  });

  test("never put in unseen what only the user can know, and take nothing out", () => {
    const text = `headnote 1
bench b
session 2026-03-02
  note "x"
run r
  stage "as cast"
  stage "ported"
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0
`;
    const { analysis, findings } = open(text);
    expect(codes(text)).toEqual([
      "missing-line",
      "no-air",
      "no-bench",
      "no-leak",
      "no-target",
      "repeated-line",
      "missing-cell",
    ]);
    expect(mendAll(analysis, findings)).toEqual([]);
    const actions = codeActions(analysis, findings, 0, 100);
    expect(actions.filter(({ isPreferred }) => isPreferred)).toEqual([]);
    expect(actions.filter(({ title }) => title.startsWith("Mend all"))).toEqual([]);
    expect(actions.map(({ title }) => title)).toContain("Add an example: target 28 inH2O");
  });

  test("of which one cannot be applied beside another are applied whole or not at all", () => {
    const span = (from: number, to: number) => ({ line: 1, from, to });
    const judged = (edits: readonly Edit[]): Judged => ({
      finding: { code: "made-up", span: span(0, 1), args: {}, related: [], fix: { title: "", edits } },
      severity: "error",
      message: "",
      help: "",
    });
    const first = { span: span(2, 6), text: "a" };
    const clashing = { span: span(4, 8), text: "b" };
    const free = { span: span(10, 12), text: "c" };
    const { analysis } = open("headnote 1\nplate p\n");
    expect(mendAll(analysis, [judged([first]), judged([free, clashing]), judged([first])])).toEqual([first]);
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
