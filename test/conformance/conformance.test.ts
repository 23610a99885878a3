// This reader passes the conformance set that is published with the format.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { PlacedBlock } from "../../grammar/outline.ts";
import type { DirectiveLine } from "../../grammar/tree.ts";
import { cellsOf } from "../../shared/model/cells.ts";
import { outlineOf, readingFindings, severityOf } from "../kit/check.ts";

const FOLDER = new URL("./", import.meta.url);

function namesIn(folder: string): string[] {
  return readdirSync(new URL(folder, FOLDER)).flatMap((file) => /^(.+)\.headnote$/.exec(file)?.[1] ?? []);
}

/** `UPDATE=1` writes the outcome anew, to be reviewed as a change of the format. */
function checkOutcome(path: string, outcome: (text: string) => unknown): void {
  const expected = new URL(`${path}.json`, FOLDER);
  const actual = outcome(readFileSync(new URL(`${path}.headnote`, FOLDER), "utf8"));
  if (process.env["UPDATE"] === "1") writeFileSync(expected, `${JSON.stringify(actual, null, 2)}\n`);
  expect(actual).toEqual(JSON.parse(readFileSync(expected, "utf8")));
}

function blockOutcome({ start, block }: PlacedBlock): unknown {
  const { entity, lines } = block;
  const [heading, ...properties] = lines.filter((line) => line.kind === "directive");
  const table = "table" in entity ? entity.table : undefined;
  return {
    kind: entity.kind,
    line: start + 1,
    id: "id" in entity ? entity.id : null,
    heading: heading === undefined ? [] : wordsOf(heading),
    properties: properties.filter(({ keyword }) => !keyword.text.startsWith("x-")).map(wordsOf),
    columns: table?.columns.map(({ name, unit }) => [name, unit?.symbol ?? null]) ?? [],
    rows:
      table?.rows.map((row) => ({
        line: start + row.line + 1,
        cells: cellsOf(row).map(({ text }) => text),
        ...(row.remark === undefined ? {} : { remark: row.remark }),
        ...(row.void === undefined ? {} : { void: row.void }),
      })) ?? [],
  };
}

function wordsOf({ text, keyword, atoms }: DirectiveLine): string[] {
  return [keyword, ...atoms].map(({ from, to }) => text.slice(from, to));
}

describe("valid files", () => {
  test.each(namesIn("valid/"))("%s", (name) => {
    checkOutcome(`valid/${name}`, (text) => {
      const read = outlineOf(text);
      expect(readingFindings(read)).toEqual([]);
      return { includes: read.includes.map(({ path }) => path), blocks: read.blocks.map(blockOutcome) };
    });
  });
});

describe("broken files", () => {
  test.each(namesIn("broken/"))("%s", (name) => {
    checkOutcome(`broken/${name}`, (text) =>
      readingFindings(outlineOf(text)).map(({ code, span }) => ({
        code,
        severity: severityOf(code),
        line: span.line + 1,
        column: span.from + 1,
        end: span.to + 1,
      })),
    );
  });
});
