// Makes the snippets: one for each block with the lines it cannot do without, from the examples of its directives.

import { bind } from "../../grammar/bind.ts";
import { findColumn } from "../../grammar/columns.ts";
import type { Form, Heading, Property } from "../../grammar/directive.ts";
import { FORMS, findHeading, findProperty, propertyKeywords } from "../../grammar/directives/index.ts";
import { format } from "../../grammar/format.ts";
import { parseLine } from "../../grammar/line-parser.ts";
import type { SlotType } from "../../grammar/slots.ts";
import { cellsOf } from "../../shared/model/cells.ts";
import type { BlockKind } from "../../shared/model/model.ts";

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}

/** The columns that most tables of a block have. */
const COLUMNS_OF: Readonly<Partial<Record<BlockKind, readonly string[]>>> = {
  run: ["lift", "depression", "flow", "settle"],
  trace: ["time", "depression", "flow"],
  ladder: ["depression", "flow"],
  map: ["x", "y", "velocity"],
  "plate-check": ["depression", "flow"],
};

/** Whether a line states a condition that a session gives to all its runs. */
export function isCondition({ within, repeatable }: Property): boolean {
  return !repeatable && within.includes("session") && within.includes("run");
}

/** The snippets as JSON, ending in a line end. */
export function snippets(): string {
  const blocks = FORMS.filter((form): form is Heading => form.form === "heading");
  const entries = [
    ...blocks.map((heading): Entry => {
      const lines = [heading.example, ...requiredLines(heading), ...tableLines(heading)];
      return [heading.keyword, snippet(heading.keyword, heading.doc, bodyOf(heading, lines))];
    }),
    ...[findHeading("session")].flatMap((heading): Entry[] => {
      if (heading === undefined) return [];
      const lines = [heading.example, ...conditionLines()];
      const doc = "Opens a session and states every condition that its runs can share.";
      return [["session with all conditions", snippet("session-all", doc, bodyOf(heading, lines))]];
    }),
    ...[findHeading("run")].flatMap((heading): Entry[] => {
      if (heading === undefined) return [];
      const doc = "The columns of a run and its first row.";
      const lines = tableLines(heading).filter((line) => line !== "");
      return [["table of a run", snippet("table", doc, bodyOf(heading, lines))]];
    }),
  ];
  return `${JSON.stringify(Object.fromEntries(entries), null, 2)}\n`;
}

type Entry = readonly [name: string, snippet: Snippet];

function snippet(prefix: string, description: string, body: readonly string[]): Snippet {
  return { prefix, description, body };
}

function conditionLines(): string[] {
  return propertyKeywords("session").flatMap((keyword) => {
    const form = findProperty("session", keyword);
    return form !== undefined && isCondition(form) ? [form.example] : [];
  });
}

/** The lines that a block cannot do without, each without what may be left out of it. */
function requiredLines(heading: Heading): string[] {
  return heading.required.flatMap((keyword) => {
    const form = findProperty(heading.block, keyword);
    return form === undefined ? [] : [withoutOptions(form)];
  });
}

/** An example as far as its first word that opens a value that may be left out. */
function withoutOptions(form: Form): string {
  const words = Object.values(form.slots).flatMap(({ optional, word }) => (optional && word ? [word] : []));
  const line = parseLine(form.example);
  const cut = line.kind === "directive" ? line.atoms.find(({ text }) => words.includes(text)) : undefined;
  return form.example.slice(0, cut?.from).trimEnd();
}

function tableLines({ block, required }: Heading): string[] {
  const names = COLUMNS_OF[block];
  if (names === undefined) return [];
  const kinds = names.flatMap((name) => findColumn(name) ?? []);
  const lines = [0, 1].map((part) => kinds.map(({ example }) => example[part]).join("  "));
  return required.length === 0 ? lines : ["", ...lines];
}

/** Lines of a block in canonical form with a stop for each of their values, counted through all lines. */
function bodyOf(heading: Heading, lines: readonly string[]): string[] {
  const opened = lines[0] === heading.example ? lines : [heading.example, ...lines];
  const text = format(["headnote 1", ...opened].join("\n")) ?? "";
  const canonical = text
    .trimEnd()
    .split("\n")
    .slice(1)
    .slice(opened.length - lines.length);
  let stop = 0;
  const next = () => ++stop;
  return canonical.map((line) => withStops(line, heading, next));
}

function withStops(text: string, heading: Heading, next: () => number): string {
  const line = parseLine(text);
  if (line.kind === "row") {
    const stops = cellsOf(line).map(({ from, to }) => ({
      from,
      to,
      put: stopOf(next(), text.slice(from, to)),
    }));
    return replaced(text, stops);
  }
  if (line.kind !== "directive") return text;
  const { keyword } = line;
  const form: Form | undefined = keyword.from === 0 ? heading : findProperty(heading.block, keyword.text);
  if (form === undefined) return text;
  const places = Object.entries(bind(form, line).places).sort(([, a], [, b]) => a.from - b.from);
  return replaced(
    text,
    places.map(([name, { from, to }]) => ({
      from,
      to,
      put: valueStop(next(), text.slice(from, to), form.slots[name]?.type),
    })),
  );
}

/** The stop of one value: a choice offers all of its words, a date is today's, the quotes of a text stay outside. */
function valueStop(stop: number, written: string, type: SlotType | undefined): string {
  if (type?.kind === "date") return stopOf(stop, "$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE");
  if (type?.kind === "choice" && type.of.length > 1) {
    const words = [written, ...type.of.filter((word) => word !== written)];
    return `\${${stop}|${words.join(",")}|}`;
  }
  return written.startsWith('"') ? `"${stopOf(stop, written.slice(1, -1))}"` : stopOf(stop, written);
}

function stopOf(stop: number, text: string): string {
  return `\${${stop}:${text}}`;
}

interface Replacement {
  readonly from: number;
  readonly to: number;
  readonly put: string;
}

function replaced(text: string, parts: readonly Replacement[]): string {
  return [...parts]
    .reverse()
    .reduce((line, { from, to, put }) => line.slice(0, from) + put + line.slice(to), text);
}
