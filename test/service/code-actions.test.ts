import { describe, expect, test } from "vitest";
import { toTextEdit } from "../../server/lsp/to-protocol.ts";
import { codeActions, findingsAt, mendAll } from "../../server/service/code-actions.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { findingsOf, type Judged } from "../../server/service/findings.ts";
import { type Edit, lineTakenOut } from "../../shared/text/edit.ts";
import { edited, open } from "../kit/service.ts";

/** The file after what is offered for its findings of a code, be it a mend or a proposal; further files are the workspace. */
function mended(fixture: string, code: string): string {
  const { analysis, findings, text, analyse, paths } = open(fixture);
  const others = paths.map((path) => analyse(path).scope);
  const action = codeActions(analysis, findings, findings, others).find(
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

describe("what is offered for a line", () => {
  const titles = (text: string, code: string) => {
    const { analysis, findings } = open(text);
    const here = findings.filter(({ finding }) => finding.code === code);
    return codeActions(analysis, findings, here.slice(0, 1)).map(({ title }) => title);
  };

  test("mends all of a kind only where it mends the one that is asked about", () => {
    const session = "session 2026-03-02\n  target 28\nrun r\n  lift  depression  flow\n";
    expect(titles(`headnote 1\n${session}`, "missing-unit")).toEqual(["Allow missing-unit here"]);
  });

  test("begins with what is sure", () => {
    const { analysis, findings } = open("headnote 1\nsesion 2026-03-02\nrun r\n");
    const here = findings.filter(({ finding }) => finding.span.line === 1);
    const found = codeActions(analysis, findings, here);
    expect(found.length).toBeGreaterThan(here.length);
    expect(found.findIndex(({ isPreferred }) => isPreferred)).toBe(0);
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

  test.each([
    ["session 2026-03-02\n  air 20 degC 1000 hPa 42%\n", "  air 20 degC 1000 hPa 42%RH"],
    ['session 2026-03-02\n  target 28"\n', "  target 28inH2O"],
    ["run r\n  lift[in]  depression[in]  flow[cfm]\n", "  lift[in]  depression[inH2O]  flow[cfm]"],
    ["session 2026-03-02\n  target 28 mm\n", "  target 28 mmH2O"],
    ["session 2026-03-02\n  target 28 cfm\n", "  target 28 cfm"],
  ])("say what a unit that is half said means: %s", (text, line) => {
    expect(mended(`headnote 1\n${text}`, "wrong-dimension").split("\n")).toContain(line);
  });

  test("write the path that is nearest to one that leads nowhere", () => {
    const other = "#- shop.headnote\nheadnote 1\n#- head.headnote\nheadnote 1\n";
    const nearest = mended(`headnote 1\ninclude "shop.headnot"\n${other}`, "missing-include");
    expect(nearest).toContain('include "shop.headnote"');
    const far = `headnote 1\ninclude "elsewhere.headnote"\n`;
    expect(mended(`${far}${other}`, "missing-include")).toBe(far.trimEnd());
  });

  test.each([
    ["missing-unit", "headnote 1\nplate p\n  diameter 2.5\nplate q\n  diameter 4 in\n", "  diameter 2.5 in"],
    ["missing-unit", "headnote 1\nplate p\n  diameter 2.5\nplate q\n  diameter 9 mm\n", "  diameter 2.5 mm"],
    [
      "missing-unit",
      "headnote 1\nrun r\n  stations 0.1 in to 0.6 in by 0.1 in\n  lift depression[inH2O] flow[cfm]\n",
      "  lift[in] depression[inH2O] flow[cfm]",
    ],
    ["missing-value", "headnote 1\nplate p\n  diameter # ?\n", "  diameter 2.500 in # ?"],
    ["extra-value", "headnote 1\nplate p\n  diameter 2.5 in 3 in  # x\n", "  diameter 2.5 in  # x"],
    ["unread-text", "headnote 1\nplate p\n  diameter 2.5 in ]\n", "  diameter 2.5 in"],
    ["number-form", "headnote 1\nplate p\n  diameter 1O.l in\n", "  diameter 10.1 in"],
    ["bad-name", "headnote 1\nhead a114/2\n", "head a114-2"],
    ["bad-date", "headnote 1\nplate p\n  due 2026/3/1\n", "  due 2026-03-01"],
    ["duplicate-id", "headnote 1\nhead a\nhead a-2\nhead a\n", "head a-3"],
    [
      "altimeter-as-station",
      SESSION.replace("1000 hPa 40 %RH", "30.02 inHg 40 %RH elevation 5000 ft"),
      "  air 20 degC altimeter 30.02 inHg 40 %RH elevation 5000 ft",
    ],
    [
      "name-not-found",
      "headnote 1\nhead h\n  engine e\n#- a/b/engines.headnote\nheadnote 1\nengine e\n",
      'include "a/b/engines.headnote"',
    ],
    [
      "missing-include",
      'headnote 1\ninclude "shop.headnote"  # the shop\n#- a/shop.headnote\nheadnote 1\n',
      'include "a/shop.headnote"  # the shop',
    ],
  ])("propose what was meant by %s: %#", (code, text, line) => {
    const lines = new Set(text.split("\n"));
    const after = mended(text, code).split("\n");
    expect(after.filter((each) => !lines.has(each))).toEqual([line]);
    // Only the first file is read again.
    if (!text.includes("#-")) expect(codes(after.join("\n"))).not.toContain(code);
  });

  test("set a row aside whose reading cannot be, and not one that is only misspelt", () => {
    const text = SESSION.replace("28.0 55.0", '27.0 55.0 "belt" # again');
    const aside = (record: string) => {
      const { analysis, findings } = open(record);
      return codeActions(analysis, findings, findings).filter(({ title }) =>
        title.startsWith("Set this row aside"),
      );
    };
    expect(aside(text).map(({ title }) => title)).toEqual(['Set this row aside: void "off target"']);
    const after = edited(text, aside(text)[0]?.edits ?? []);
    expect(after).toContain('  0.1 27.0 55.0 "belt"  void "off target" # again');
    expect(codes(after)).not.toContain("off-target");
    expect(aside(`${SESSION}  0.2 28,0 60\n`)).toEqual([]);
    const falling = `${SESSION}  0.2 28.0 110.0\n  0.3 28.0 90.0\n`;
    expect(codes(falling)).toContain("fall-back");
    expect(aside(falling)).toEqual([]);
  });

  test("are those of what the cursor touches, or else of its line", () => {
    const { findings } = open("headnote 1\nplate p\n  flow 9,8 cfm at 28 imch\n");
    const at = (column: number) =>
      findingsAt(findings, { line: 2, column }, { line: 2, column }).map(({ finding }) => finding.code);
    expect([at(8), at(22), at(14)]).toEqual([
      ["decimal-comma"],
      ["unknown-unit"],
      ["decimal-comma", "unknown-unit"],
    ]);
  });

  test("propose no unit that the file does not write, or where it may measure one thing or another", () => {
    const plate = "headnote 1\nplate p\n  diameter 2.5\n  due 2026-11-20\n";
    expect(mended(plate, "missing-unit")).toBe(plate);
    const air = "headnote 1\nsession 2026-03-02\n  air 20 1000 hPa\n";
    expect(mended(air, "missing-unit")).toBe(air);
  });

  test("propose no file where two would do", () => {
    const twice = "#- b.headnote\nheadnote 1\nengine e\n#- c.headnote\nheadnote 1\nengine e\n";
    const text = "headnote 1\nhead h\n  engine e\n";
    expect(mended(text + twice, "name-not-found")).toBe(text.trimEnd());
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
    const actions = codeActions(analysis, findings, findings);
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
    const all = codeActions(analysis, findings, findings).find(
      ({ title }) => title === "Mend all decimal-comma in this file",
    );
    expect(codes(edited(text, all?.edits ?? []))).toEqual(["unknown-unit"]);
    expect(codes(edited(text, mendAll(analysis, findings)))).toEqual([]);
  });

  test("silence a finding where it stands, with room for the reason", () => {
    const text = "headnote 1\nbench b\n";
    const { analysis, findings } = open(text);
    const allow = codeActions(analysis, findings, findings).find(({ title }) => title.startsWith("Allow"));
    expect(edited(text, allow?.edits ?? [])).toBe("headnote 1\n# allow missing-line: \nbench b\n");
    expect(codes(edited(text, allow?.edits ?? []))).toEqual([]);
  });
});
