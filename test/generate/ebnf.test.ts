// The grammar in EBNF speaks of everything that the reader knows, and of nothing that it does not define.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { globSync } from "tinyglobby";
import { describe, expect, test } from "vitest";
import { COLUMNS } from "../../grammar/columns.ts";
import { FORMS, keywords } from "../../grammar/directives/index.ts";
import { KINDS } from "../../server/catalogue.ts";
import { ebnf } from "../../server/generate/ebnf.ts";
import { exampleFiles } from "../../server/generate/example.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import { readNumber } from "../../shared/quantity/number.ts";
import { UNITS } from "../../shared/quantity/units.ts";
import { numberWord } from "../kit/arbitraries.ts";
import { outlineOf, readingFindings } from "../kit/check.ts";

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

const forms = new Map(rules.map(({ symbol, form }) => [symbol, form]));
const escaped = (literal: string) => literal.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
const character = (hex: string) => `\\u${hex.padStart(4, "0")}`;

/** A form of the notation as a regular expression; the grammar of a line is not recursive. */
function pattern(form: string): string {
  return form.replaceAll(
    /'([^']*)'|"([^"]*)"|\[([^\]]*)\]|#x([0-9A-F]+)|([A-Za-z][A-Za-z0-9-]*)( - '#')?|\s+/g,
    (_, single?: string, double?: string, set?: string, hex?: string, symbol?: string, but?: string) => {
      const literal = single ?? double;
      if (literal !== undefined) return `(?:${escaped(literal)})`;
      if (set !== undefined)
        return `[${set.replaceAll("\\", "\\\\").replaceAll(/#x([0-9A-F]+)/g, (_, code: string) => character(code))}]`;
      if (hex !== undefined) return character(hex);
      if (symbol === undefined) return "";
      return `${but === undefined ? "" : "(?!#)"}(?:${pattern(forms.get(symbol) ?? "")})`;
    },
  );
}

const compiled = new Map<string, RegExp>();

function matches(symbol: string, text: string): boolean {
  const expression = compiled.get(symbol) ?? new RegExp(`^(?:${pattern(forms.get(symbol) ?? "")})$`, "u");
  compiled.set(symbol, expression);
  return expression.test(text);
}

/** The lines of a file that has nothing to be reported, against the symbols that they must be an example of. */
function checkLines(text: string): void {
  const { lines, blocks } = outlineOf(text);
  const starts = new Map(blocks.map(({ start, block }) => [start, block.heading.block]));
  let block = "";
  lines.forEach((line, index) => {
    block = starts.get(index) ?? block;
    const written = `${line.text}\n`;
    const symbol = {
      blank: "BlankLine",
      row: "Row",
      columns: `${block}-columns`,
      conflict: "",
      directive: starts.has(index)
        ? `${block}-heading`
        : lineSymbol(line.kind === "directive" ? line.keyword.text : ""),
    }[line.kind];
    expect(matches(symbol, written), `${symbol}: ${line.text}`).toBe(true);
  });
}

function lineSymbol(keyword: string): string {
  if (keyword === "headnote") return "VersionLine";
  if (keyword === "include") return "IncludeLine";
  return keyword.startsWith("x-") ? "OwnLine" : `${keyword}-line`;
}

describe("the grammar takes", () => {
  const root = join(import.meta.dirname, "../..");
  const samples = globSync(["samples/**/*.headnote"], { cwd: root })
    .sort()
    .map((path) => ({ path, file: readFileSync(join(root, path), "utf8") }))
    .filter(({ file }) => readingFindings(outlineOf(file)).length === 0);

  test.each(samples)("every line of $path", ({ file }) => {
    checkLines(file);
  });

  test.each(KINDS)("every line of the good example of $code", ({ good }) => {
    for (const { path, text: file } of exampleFiles(good)) if (path.endsWith(".headnote")) checkLines(file);
  });

  test.each(FORMS)("the example of $keyword", ({ form, keyword, example }) => {
    expect(matches(form === "heading" ? `${keyword}-heading` : `${keyword}-line`, `  ${example}\n`)).toBe(
      true,
    );
  });

  test("every number that is read, and no other word", () => {
    fc.assert(fc.property(numberWord, (word) => matches("Number", word) === "value" in readNumber(word)));
    for (const word of ["5.", "+3", "1,5", "1e3", "-", "", "1/", "--1", "."])
      expect(matches("Number", word)).toBe(false);
  });
});
