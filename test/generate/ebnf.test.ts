// The grammar in EBNF speaks of everything that the reader knows, and of nothing that it does not define.
import { expect, test } from "vitest";
import { COLUMNS } from "../../grammar/columns.ts";
import { FORMS, keywords } from "../../grammar/directives/index.ts";
import { ebnf } from "../../server/generate/ebnf.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import { UNITS } from "../../shared/quantity/units.ts";

interface Rule {
  readonly symbol: string;
  readonly form: string;
}

const text = ebnf();
const rules: readonly Rule[] = text.split("\n").flatMap((line) => {
  const match = /^(\S+)\s+::= (.*)$/.exec(line.replaceAll(/\/\*.*?\*\//g, ""));
  return match === null ? [] : [{ symbol: match[1] ?? "", form: match[2] ?? "" }];
});

/** A form without its literals, character classes and character codes. */
function symbolsOf(form: string): readonly string[] {
  const bare = form.replaceAll(/'[^']*'|"[^"]*"/g, " ").replaceAll(/\[[^\]]*\]|#x[0-9A-F]+/g, " ");
  return bare.match(/[A-Za-z][A-Za-z0-9-]*/g) ?? [];
}

function literals(): ReadonlySet<string> {
  return new Set(rules.flatMap(({ form }) => [...form.matchAll(/'([^']*)'/g)].map(([, word = ""]) => word)));
}

test("every symbol is defined, once", () => {
  const defined = rules.map(({ symbol }) => symbol);
  expect(defined.filter((symbol, index) => defined.indexOf(symbol) !== index)).toEqual([]);
  const used = new Set(rules.flatMap(({ form }) => symbolsOf(form)));
  expect([...used].filter((symbol) => !defined.includes(symbol))).toEqual([]);
});

test("every symbol is used, but for the one that all begins with", () => {
  const used = new Set(rules.flatMap(({ form }) => symbolsOf(form)));
  expect(rules.map(({ symbol }) => symbol).filter((symbol) => !used.has(symbol))).toEqual(["record"]);
});

test("every keyword, slot's word, choice, column, unit and reference air occurs", () => {
  const slots = FORMS.flatMap((form) => Object.values(form.slots));
  const choices = slots.flatMap(({ type }) => (type.kind === "choice" ? type.of : []));
  const words = [
    ...["headnote", "include", "void", ...keywords, ...choices],
    ...slots.flatMap(({ word }) => word ?? []),
    ...COLUMNS.map(({ name }) => name),
    ...referenceAirs.map(({ name }) => name),
    ...UNITS.filter(({ dimensions }) => dimensions.some((dimension) => dimension !== "mass-flow")).map(
      ({ symbol }) => symbol,
    ),
  ];
  const known = literals();
  expect(words.filter((word) => !known.has(word))).toEqual([]);
});

test("parentheses pair up in every rule", () => {
  for (const { symbol, form } of rules) {
    const bare = form.replaceAll(/'[^']*'/g, "");
    expect(bare.split("(").length, symbol).toBe(bare.split(")").length);
  }
});
