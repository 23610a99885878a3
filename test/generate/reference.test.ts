// The reference leaves nothing out, its links lead somewhere, and what it shows is what the product does.
import { describe, expect, test } from "vitest";
import { COLUMNS } from "../../grammar/columns.ts";
import { FORMS } from "../../grammar/directives/index.ts";
import { CODES, KINDS } from "../../server/catalogue.ts";
import { judgeExample } from "../../server/generate/example.ts";
import { LIMIT_ENTRIES } from "../../server/generate/limits.ts";
import { reference } from "../../server/generate/reference.ts";
import { unitAnchor } from "../../server/generate/reference-units.ts";
import { POINT_CALCULATIONS } from "../../shared/calc/points/index.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import { UNITS } from "../../shared/quantity/units.ts";

const text = reference();
const anchors = [...text.matchAll(/<a id="([^"]+)"><\/a>/g)].map(([, id = ""]) => id);

/** The whole files shown between two places of the text. */
function filesIn(part: string): readonly string[] {
  return [...part.matchAll(/^```headnote\n([\s\S]*?)^```$/gm)].map(([, file = ""]) => file);
}

function sectionOf(code: string): string {
  const [, rest = ""] = text.split(`<a id="${code}"></a>`);
  return rest.split('<a id="')[0] ?? "";
}

const codesIn = (file: string) => judgeExample(file).map(({ finding }) => finding.code);

test.each([
  ["finding", CODES],
  ["block", FORMS.filter(({ form }) => form === "heading").map(({ keyword }) => `block-${keyword}`)],
  ["line", FORMS.filter(({ form }) => form === "property").map(({ keyword }) => `line-${keyword}`)],
  ["column", COLUMNS.map(({ name }) => `column-${name}`)],
  ["unit", UNITS.map(({ symbol }) => unitAnchor(symbol))],
  ["reference air", referenceAirs.map(({ name }) => `air-${name}`)],
  ["result", POINT_CALCULATIONS.map(({ id }) => `result-${id}`)],
  ["limit", LIMIT_ENTRIES.map(({ key }) => `limit-${key}`)],
])("every %s has its anchor", (_, ids) => {
  expect(ids.filter((id) => !anchors.includes(id))).toEqual([]);
});

test("no anchor stands twice, and every link leads to one", () => {
  expect(anchors.filter((id, index) => anchors.indexOf(id) !== index)).toEqual([]);
  const links = [...text.matchAll(/\]\(#([^)]+)\)/g)].map(([, id = ""]) => id);
  expect(links.filter((id) => !anchors.includes(id))).toEqual([]);
});

test("nothing in it is undefined or no number", () => {
  expect(text).not.toMatch(/undefined|\bNaN\b|\[object/);
});

test("the record on its first page is without findings", () => {
  const [first = ""] = filesIn(text);
  expect(codesIn(first)).toEqual([]);
});

describe.each(KINDS)("$code", ({ code, severity }) => {
  const [bad = "", good = "", ...others] = filesIn(sectionOf(code));

  test("shows a file that gives it and one that gives nothing", () => {
    expect(codesIn(bad)).toEqual([code]);
    expect(codesIn(good)).toEqual([]);
    expect(others).toEqual([]);
  });

  test("prints the message that the file shown gives", () => {
    const [judged] = judgeExample(bad);
    expect(sectionOf(code)).toContain(`> ${severity}: ${judged?.message}<br>help: ${judged?.help}`);
  });
});
