// Every snippet, with its stops filled in, is a block that can be read.
import { describe, expect, test } from "vitest";
import { FORMS } from "../../grammar/directives/index.ts";
import { format } from "../../grammar/format.ts";
import { snippets } from "../../server/generate/snippets.ts";
import { outlineOf, readingFindings } from "../kit/check.ts";

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}

const all: Readonly<Record<string, Snippet>> = JSON.parse(snippets());

const TODAY: Readonly<Record<string, string>> = {
  CURRENT_YEAR: "2026",
  CURRENT_MONTH: "02",
  CURRENT_DATE: "28",
};

/** What stands in the file if all stops are left as they are. */
function filled(body: readonly string[]): string {
  return body
    .join("\n")
    .replace(/\$([A-Z_]+)/g, (whole, name: string) => TODAY[name] ?? whole)
    .replace(/\$\{\d+\|([^,|]+)[^|]*\|\}/g, "$1")
    .replace(/\$\{\d+:([^}]*)\}/g, "$1");
}

/** The words that the stops offer, each with the body that has it. */
function choicesOf(body: readonly string[]): string[] {
  const text = body.join("\n");
  return [...text.matchAll(/\$\{(\d+)\|([^|]+)\|\}/g)].flatMap(([stop, , words = ""]) =>
    words.split(",").map((word) => filled([text.replace(stop, word)])),
  );
}

function checkReads(text: string): void {
  expect(readingFindings(outlineOf(`headnote 1\n${text}\n`)), text).toEqual([]);
}

describe.each(Object.entries(all))("%s", (name, { prefix, description, body }) => {
  // The table alone stands in a run.
  const opening = name === "table of a run" ? ["run r1"] : [];

  test("reads without findings and is in canonical form", () => {
    const text = filled([...opening, ...body]);
    checkReads(text);
    expect(format(`headnote 1\n${text}\n`)).toBe(`headnote 1\n${text}\n`);
  });

  test("offers only words that can stand there", () => {
    for (const text of choicesOf([...opening, ...body])) checkReads(text);
  });

  test("counts its stops from one up", () => {
    const stops = [...body.join("\n").matchAll(/\$\{(\d+)/g)].map(([, stop]) => Number(stop));
    expect(stops).toEqual(stops.map((_, index) => index + 1));
  });

  test("has a word to type and a sentence that explains it", () => {
    expect(prefix).toMatch(/^[a-z-]+$/);
    expect(description).toMatch(/\S\.$/);
  });
});

test("every heading has a snippet, and no two share a word", () => {
  const prefixes = Object.values(all).map(({ prefix }) => prefix);
  for (const { form, keyword } of FORMS) if (form === "heading") expect(prefixes).toContain(keyword);
  expect(new Set(prefixes).size).toBe(prefixes.length);
});
