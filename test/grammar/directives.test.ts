// Every directive and every column is read as its own example says.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bind } from "../../grammar/bind.ts";
import { COLUMNS } from "../../grammar/columns.ts";
import type { Form, Heading } from "../../grammar/directive.ts";
import { FORMS, findHeading, findProperty } from "../../grammar/directives/index.ts";
import { parseLine } from "../../grammar/line-parser.ts";
import { signature } from "../../grammar/signature.ts";
import type { BlockKind } from "../../shared/model/model.ts";
import { blockLines, HEADINGS, lineWords } from "../kit/arbitraries.ts";
import { outlineOf, readingFindings } from "../kit/check.ts";

function checkClean(text: string): void {
  expect(readingFindings(outlineOf(text)), text).toEqual([]);
}

function headingOf(block: BlockKind): Heading {
  const heading = findHeading(block);
  if (heading === undefined) throw new Error(`no heading opens a ${block}`);
  return heading;
}

/** A block with all that it needs, with `lines` among its properties and `columns` among its columns. */
function blockWith(
  block: BlockKind,
  lines: readonly string[],
  columns: readonly (typeof COLUMNS)[number][],
): string {
  const heading = headingOf(block);
  const stated = new Set(lines.map((line) => line.split(" ")[0]));
  const needed = heading.required.filter((keyword) => !stated.has(keyword));
  const properties = [...needed.map((keyword) => findProperty(block, keyword)?.example ?? keyword), ...lines];
  const names = new Set(columns.map(({ name }) => name));
  const own = COLUMNS.filter(({ name }) => heading.columns?.includes(name) && !names.has(name));
  const table = [...own, ...columns];
  const head = table.map(({ example }) => example[0]).join("  ");
  const row = table.map(({ example }) => example[1]).join("  ");
  return ["headnote 1", heading.example, ...properties, head, table.length === 0 ? "" : row].join("\n");
}

describe.each(FORMS.map((form): [string, Form] => [`${form.form} ${form.keyword}`, form]))(
  "%s",
  (_, form) => {
    test("reads its example", () => {
      const blocks = form.form === "heading" ? [form.block] : form.within;
      for (const block of blocks)
        checkClean(blockWith(block, form.form === "heading" ? [] : [form.example], []));
    });

    test("reads whatever its slots allow", () => {
      fc.assert(
        fc.property(lineWords(form), (words) => {
          const line = parseLine(words.join(" "));
          if (line.kind !== "directive") throw new Error("not a directive");
          const bound = bind(form, line);
          expect(bound).toMatchObject({ complete: true, findings: [] });
          for (const { from, to } of Object.values(bound.places))
            expect(line.text.slice(from, to)).not.toBe("");
        }),
        { numRuns: 30 },
      );
    });

    test("never throws on words of any kind, and says so where it does not understand them", () => {
      const word = fc.oneof(
        fc.constantFrom(
          "at",
          "in",
          "to",
          "by",
          "within",
          "none",
          "28",
          "inH2O",
          '2.0"',
          "-",
          "1/0",
          '"a',
          '"b"',
        ),
        fc.string({ maxLength: 5 }),
      );
      fc.assert(
        fc.property(fc.array(word, { maxLength: 8 }), (words) => {
          const line = parseLine([form.keyword, ...words].join(" "));
          if (line.kind !== "directive") return;
          const bound = bind(form, line);
          expect(bound.complete || bound.findings.length > 0).toBe(true);
          for (const { span } of bound.findings) {
            expect(span.from).toBeLessThanOrEqual(span.to);
            expect(span.to).toBeLessThanOrEqual(line.text.length);
          }
        }),
        { numRuns: 60 },
      );
    });

    test("has a form that begins with its keyword", () => {
      expect(signature(form)).toMatch(new RegExp(`^${form.keyword}( |$)`));
      expect(form.example).toMatch(new RegExp(`^${form.keyword}( |$)`));
    });
  },
);

describe.each(COLUMNS.map((column): [string, typeof column] => [column.name, column]))(
  "column %s",
  (_, column) => {
    test("reads its example in every block that has it", () => {
      for (const block of column.within) checkClean(blockWith(block, [], [column]));
    });
  },
);

describe.each(HEADINGS.map((heading): [string, Heading] => [heading.keyword, heading]))(
  "a %s block",
  (_, heading) => {
    test("reads whatever its lines and columns allow", () => {
      fc.assert(
        fc.property(blockLines(heading), (lines) => {
          checkClean(["headnote 1", ...lines.map((words) => words.join(" "))].join("\n"));
        }),
        { numRuns: 40 },
      );
    });
  },
);
