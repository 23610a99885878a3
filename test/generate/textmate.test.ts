// The TextMate grammar colours what our own lexer and line kinds see, and nothing else.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import fc from "fast-check";
import { globSync } from "tinyglobby";
import { beforeAll, describe, expect, test } from "vitest";
import { createOnigScanner, createOnigString, loadWASM } from "vscode-oniguruma";
import { type IGrammar, INITIAL, parseRawGrammar, Registry } from "vscode-textmate";
import { findColumn } from "../../grammar/columns.ts";
import { FORMS } from "../../grammar/directives/index.ts";
import { FILE_KEYWORDS } from "../../grammar/file-lines.ts";
import { lexLine } from "../../grammar/lexer.ts";
import { isOwnKeyword } from "../../grammar/line-kind.ts";
import { Comment, Text, UnclosedText } from "../../grammar/tokens.ts";
import type { Line } from "../../grammar/tree.ts";
import { KINDS } from "../../server/catalogue.ts";
import { exampleFiles } from "../../server/generate/example.ts";
import { FIRST_RECORD } from "../../server/generate/reference-format.ts";
import { textmate } from "../../server/generate/textmate.ts";
import { cellsOf } from "../../shared/model/cells.ts";
import { readNumber } from "../../shared/quantity/number.ts";
import { findUnit } from "../../shared/quantity/unit.ts";
import { carelessFile } from "../kit/arbitraries.ts";
import { outlineOf } from "../kit/check.ts";

const ROOT = join(import.meta.dirname, "../..");
let grammar: IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
  await loadWASM(new Uint8Array(readFileSync(wasm)).buffer);
  const onigLib = Promise.resolve({ createOnigScanner, createOnigString });
  const loadGrammar = () => Promise.resolve(parseRawGrammar(textmate(), "headnote.json"));
  const loaded = await new Registry({ onigLib, loadGrammar }).loadGrammar("source.headnote");
  if (loaded === null) throw new Error("the grammar did not load");
  grammar = loaded;
});

/** The scopes of each character of a line, joined. */
function scopesOf(text: string): readonly string[] {
  const { tokens, ruleStack } = grammar.tokenizeLine(text, INITIAL);
  // No line may leak into the next one.
  expect(ruleStack.depth, text).toBe(1);
  return [
    ...tokens.flatMap((token) =>
      Array<string>(Math.max(0, Math.min(token.endIndex, text.length) - token.startIndex)).fill(
        token.scopes.join(" "),
      ),
    ),
  ];
}

/** The stretches of a line whose characters all have a scope, as they stand in the text. */
function stretches(text: string, scope: string): readonly string[] {
  const has = scopesOf(text).map((scopes) => scopes.split(" ").some((name) => name.startsWith(scope)));
  const found: string[] = [];
  has.forEach((is, index) => {
    if (!is) return;
    if (index > 0 && has[index - 1]) found.push((found.pop() ?? "") + text.charAt(index));
    else found.push(text.charAt(index));
  });
  return found;
}

function checkScope(text: string, at: { readonly from: number; readonly to: number }, scope: string): void {
  const scopes = scopesOf(text).slice(at.from, at.to);
  for (const each of scopes) expect(each, `${text.slice(at.from, at.to)} in ${text}`).toContain(scope);
}

const imagesOf = (text: string, isKind: (name: string) => boolean) =>
  lexLine(text).flatMap(({ tokenType, image }) => (isKind(tokenType.name) ? [image] : []));

/** Comments and texts are found by the same rules, whatever else stands in the line. */
function checkCommentsAndTexts(text: string): void {
  if (stretches(text, "invalid.illegal.conflict-marker").length > 0) return;
  expect(stretches(text, "comment."), text).toEqual(imagesOf(text, (name) => name === Comment.name));
  const joined = (images: readonly string[]) => images.join("");
  expect(joined(stretches(text, "string.")), text).toBe(joined(imagesOf(text, (name) => name === Text.name)));
  const unclosed = imagesOf(text, (name) => name === UnclosedText.name);
  expect(stretches(text, "invalid.illegal.unclosed-text"), text).toEqual(unclosed);
}

const keywordsKnown = new Set([...FILE_KEYWORDS, ...FORMS.map(({ keyword }) => keyword)]);

/** A line is coloured by its kind; `opens` says whether our own reader lets it open a block. */
function checkKind(line: Line, opens: boolean): void {
  const { text } = line;
  switch (line.kind) {
    case "directive": {
      const { keyword } = line;
      if (!keywordsKnown.has(keyword.text) && !isOwnKeyword(keyword.text)) {
        expect(stretches(text, "keyword.control.heading"), text).toEqual([]);
        expect(stretches(text, "keyword.other.property"), text).toEqual([]);
      } else if (FILE_KEYWORDS.includes(keyword.text)) checkScope(text, keyword, "keyword.control.");
      else if (isOwnKeyword(keyword.text)) checkScope(text, keyword, "keyword.other.own");
      else checkScope(text, keyword, opens ? "keyword.control.heading" : "keyword.other.property");
      break;
    }
    case "columns":
      for (const { name, unit } of line.heads) {
        if (findColumn(name.text) !== undefined) checkScope(text, name, "entity.name.tag.column");
        if (unit !== undefined && findUnit(unit.text)?.canonical && text.charAt(unit.to) === "]")
          checkScope(text, unit, "keyword.other.unit");
      }
      break;
    case "row":
      for (const cell of cellsOf(line)) {
        if ("value" in readNumber(cell.text)) checkScope(text, cell, "constant.numeric");
        else if (cell.text === "-") checkScope(text, cell, "constant.language.missing");
        else expect(scopesOf(text).slice(cell.from, cell.to).join(" ")).not.toContain("constant.numeric");
      }
      expect(stretches(text, "keyword.control.void")).toEqual(line.void === undefined ? [] : ["void"]);
      break;
    case "conflict":
      checkScope(text, { from: 0, to: text.length }, "invalid.illegal.conflict-marker");
      break;
    default:
      expect(stretches(text, "keyword."), text).toEqual(text.includes("# allow") ? ["allow"] : []);
  }
}

/** What is coloured as a unit, a number or a date is one. */
function checkValues(text: string): void {
  for (const unit of stretches(text, "keyword.other.unit")) expect(findUnit(unit), text).toBeDefined();
  for (const number of stretches(text, "constant.numeric"))
    expect(readNumber(number), text).toHaveProperty("value");
  for (const date of stretches(text, "constant.other.date")) expect(date).toMatch(/^\d{4}-\d\d-\d\d/);
}

function checkFile(text: string): void {
  const { lines, blocks } = outlineOf(text);
  const starts = new Set(blocks.map(({ start }) => start));
  lines.forEach((line, index) => {
    checkCommentsAndTexts(line.text);
    checkKind(line, starts.has(index));
    checkValues(line.text);
  });
}

describe("files", () => {
  const samples = globSync(["samples/**/*.headnote"], { cwd: ROOT }).sort();

  test.each(samples)("%s is coloured as it is read", (path) => {
    checkFile(readFileSync(join(ROOT, path), "utf8"));
  });

  test.each(KINDS)("the examples of $code are coloured as they are read", ({ bad, good }) => {
    const files = [...exampleFiles(bad), ...exampleFiles(good)];
    for (const { path, text } of files) if (path.endsWith(".headnote")) checkFile(text);
  });

  test("the record on the reference's first page is coloured as it is read", () => {
    checkFile(FIRST_RECORD);
  });
});

describe("lines", () => {
  test.each(FORMS)("$keyword is a keyword in its own example", ({ form, example }) => {
    const text = form === "heading" ? example : `  ${example}`;
    const scope = form === "heading" ? "keyword.control.heading" : "keyword.other.property";
    checkScope(text, { from: text.length - example.length, to: text.indexOf(" ", 2) }, scope);
  });

  test.each([
    ['bench north "by the wall"', "entity.name.type", ["north"]],
    ["run i3-as-cast.2", "entity.name.type", ["i3-as-cast.2"]],
    ['session 2026-11-20T09:30+01:00 "a"', "constant.other.date", ["2026-11-20T09:30+01:00"]],
    ["trace 0.400 in of i3", "entity.name.type", []],
    ["trace 0.400 in of i3", "keyword.other.unit", ["in"]],
    ["trace 0.400 in of i3", "keyword.operator.word", ["of"]],
    ["  shows flow at 28 inH2O in isa", "keyword.operator.word", ["at", "in"]],
    ["  shows flow at 28 inH2O in isa", "support.constant.air", ["isa"]],
    ["  shows flow at 28 inH2O in isa", "constant.language.choice", ["flow"]],
    ["  stem 11/32 in", "constant.numeric", ["11/32"]],
    ["  stem 1-3/8in", "keyword.other.unit", ["in"]],
    ['  valve 2.020"', "keyword.other.unit", ['"']],
    ["  leak 1.8 cfm at 28 inH2O@60degF", "keyword.other.unit", ["cfm", "inH2O@60degF"]],
    ["  air 71.5 degF 29.18 inHg 42 %RH", "keyword.other.unit", ["degF", "inHg", "%RH"]],
    ["  0.300 28.0 1,5", "invalid.illegal.number", ["1,5"]],
    ["  0.300 +28.0 5. 1e3", "invalid.illegal.number", ["+28.0", "5.", "1e3"]],
    ["  0.300 28.0 2in", "invalid.illegal.number", []],
    ['  0.300 28.0 - void "belt slipped"', "string.quoted", ['"belt slipped"']],
    ['  note "a \\"b\\" \\\\ c"', "constant.character.escape", ['\\"', '\\"', "\\\\"]],
    ['  note "never closed', "invalid.illegal.unclosed-text", ['"never closed']],
    ['  note "# no comment" # a comment', "comment.line", ["# a comment"]],
    ["  0.300 28.0 # allow off-target: belt", "entity.name.tag.code", ["off-target"]],
    ['include "../shop.headnote"', "keyword.control.include", ["include"]],
    ["headnote 1", "constant.numeric.version", ["1"]],
    ["<<<<<<< mine", "invalid.illegal.conflict-marker", ["<<<<<<< mine"]],
    ["  lift[in]  range  flow [cfm]", "entity.name.tag.column", ["lift", "range", "flow"]],
    ["  lift[furlong]  flow[cfm]", "keyword.other.unit", ["cfm"]],
    ["  signal[V flow[cfm]", "entity.name.tag.column", ["signal", "flow"]],
    ["  diametre 2.5 in", "keyword.other.property", []],
  ])("%s: %s", (text, scope, found) => {
    expect(stretches(text, scope)).toEqual(found);
  });

  test("comments and texts are the same in any careless file", () => {
    fc.assert(
      fc.property(carelessFile, (text) => {
        for (const line of text.split(/\r\n|\n|\r/)) checkCommentsAndTexts(line);
      }),
      { numRuns: 30 },
    );
  });
});
