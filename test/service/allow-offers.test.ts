import { expect, test } from "vitest";
import { CODES } from "../../server/catalogue.ts";
import { codeActions } from "../../server/service/code-actions.ts";
import { definition } from "../../server/service/definition.ts";
import { references } from "../../server/service/references.ts";
import { renamable } from "../../server/service/rename.ts";
import { signatureHelp } from "../../server/service/signature-help.ts";
import { labelsAt, offersAt } from "../kit/offers.ts";
import { open } from "../kit/service.ts";

/** A file with `missing-line` in its line 2 and, below what is tested, four findings of a bare session. */
const record = (line: string) =>
  `headnote 1\nbench b\n  shows flow\n${line}\nsession 2026-03-02\nrun r\n  lift[in]  depression[inH2O]  flow[cfm]\n  0.100  28.0  50.0\n`;

test("every finding that a comment can silence is offered behind 'allow'", () => {
  const silencers = ["unknown-allow", "unused-allow"];
  const found = labelsAt("headnote 1\n# allow $0\n");
  expect([...found].sort()).toEqual(CODES.filter((code) => !silencers.includes(code)).sort());
});

test("those of the line that the comment speaks of come first, with what they say, then the nearest of the file", () => {
  const found = offersAt(
    "headnote 1\nport p\n  seat 45 furlong\n# allow $0\n  valve 2 inH2O\n  stem 7 smoot\n",
  );
  expect(found.slice(0, 3).map(({ label }) => label)).toEqual([
    "wrong-dimension",
    "unknown-unit",
    "missing-line",
  ]);
  expect(found[0]?.detail).toContain("inH2O");
  expect(found.at(-1)?.documentation).toMatch(/^\*\*[a-z-]+\*\* — .+\n\n.+/);
});

test("a comment behind something speaks of its own line", () => {
  expect(labelsAt("headnote 1\nport p\n  valve 2 inH2O  # allow $0\n  stem 7 smoot\n")[0]).toBe(
    "wrong-dimension",
  );
});

test("several comments above a line all speak of it", () => {
  const fixture =
    "headnote 1\nport p\n# allow $0\n# allow unknown-unit: an old one\n  valve 2 smoot # so it says\n";
  expect(labelsAt(fixture)).toContain("unknown-unit");
  expect(labelsAt(fixture.replace("# so it says", "3"))[0]).toBe("extra-value");
});

test("a code is written with the colon in front of its reason, unless that stands there", () => {
  const inserted = (line: string) => offersAt(record(line)).find(({ label }) => label === "no-leak");
  expect(inserted("# allow no$0")).toMatchObject({ insert: "no-leak: ", from: 8, to: 10 });
  expect(inserted("  # allow no$0-lek : taped")).toMatchObject({ insert: "no-leak", from: 10, to: 16 });
});

test("the word itself is offered where a comment begins, but does not open a list by itself", () => {
  expect(labelsAt("headnote 1\n# $0\n")).toEqual(["allow"]);
  expect(labelsAt("headnote 1\n# al$0\n")).toEqual(["allow"]);
  expect(labelsAt("headnote 1\n# belt $0\n")).toEqual([]);
  expect(offersAt("headnote 1\n# $0\n", [], " ")).toEqual([]);
});

test("nothing is offered in a reason, nor where no comment begins", () => {
  expect(labelsAt("headnote 1\n# allow no-leak: $0\n")).toEqual([]);
  expect(labelsAt('headnote 1\nbench b\nsession 2026-03-02\n  note "# allow $0"\n')).toEqual([]);
});

test("a code is no name: nothing goes from it and nothing renames it", () => {
  const { analysis, position } = open("headnote 1\n# allow no-le$0ak: taped\nbench no-leak\n");
  expect(definition(analysis, position)).toBeUndefined();
  expect(renamable(analysis, position)).toBeUndefined();
  expect(references(analysis, position, [])).toEqual([]);
  expect(signatureHelp(analysis, position)).toBeUndefined();
});

test("a comment that silences nothing is not offered to be silenced itself", () => {
  const { analysis, findings } = open("headnote 1\n# allow no-leak: x\n# allow no-lek: x\n");
  expect(findings.map(({ finding }) => finding.code)).toEqual(["unused-allow", "unknown-allow"]);
  const titles = codeActions(analysis, findings, findings).map(({ title }) => title);
  expect(titles.filter((title) => title.startsWith("Allow"))).toEqual([]);
});
