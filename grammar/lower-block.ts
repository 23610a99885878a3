// Turns the lines of one block into the entity that they describe.
import { type Finding, raise, shiftedFinding } from "../shared/finding.ts";
import type {
  BlockKind,
  Draft,
  Entities,
  Entity,
  NamedKind,
  Origin,
  Reference,
  Table,
} from "../shared/model/model.ts";
import { type Span, shifted } from "../shared/text/span.ts";
import { type Bound, bind } from "./bind.ts";
import type { Form, Heading } from "./directive.ts";
import { findProperty } from "./directives/index.ts";
import { missingColumns } from "./findings/missing-columns.ts";
import { missingLine } from "./findings/missing-line.ts";
import { repeatedLine } from "./findings/repeated-line.ts";
import { headOf, lowerTable } from "./lower-table.ts";
import type { DirectiveLine, Line } from "./tree.ts";

/** A name that a block uses, and of what kind of thing it is the name. */
export interface Use {
  readonly kind: NamedKind;
  readonly id: string;
  readonly span: Span;
}

/** A block that has been read. All spans count from its first line. */
export interface Block {
  readonly heading: Heading;
  readonly lines: readonly Line[];
  readonly entity: Entity;
  readonly uses: readonly Use[];
  readonly findings: readonly Finding[];
}

/** Blocks by their first line's node, so that a block whose lines have not changed is never read again. */
export interface BlockMemory {
  readonly get: (first: Line) => Block | undefined;
  readonly set: (first: Line, block: Block) => void;
}

export function blockMemory(): BlockMemory {
  const blocks = new WeakMap<Line, Block>();
  return { get: (first) => blocks.get(first), set: (first, block) => blocks.set(first, block) };
}

/** For files that are read once: what a `WeakMap` holds outlives its file by far. */
export const NO_MEMORY: BlockMemory = { get: () => undefined, set: () => undefined };

/**
 * The entity of a block. `lines[0]` is the heading's line. The same lines give the same block object, wherever in the
 * file they stand, as long as `known` remembers it.
 */
export function lowerBlock(heading: Heading, lines: readonly Line[], known: BlockMemory): Block {
  const first = lines[0];
  if (first?.kind !== "directive") throw new RangeError("a block begins with a directive");
  const before = known.get(first);
  if (before !== undefined && before.heading === heading && sameLines(before.lines, lines)) return before;
  const block = read(heading, lines, first);
  known.set(first, block);
  return block;
}

function sameLines(a: readonly Line[], b: readonly Line[]): boolean {
  return a.length === b.length && a.every((line, index) => line === b[index]);
}

interface Reading {
  readonly heading: Heading;
  readonly entity: Draft<Entities[BlockKind]>;
  readonly origin: Draft<Origin>;
  /** The origin's lines, once there are any. */
  lines: Map<string, Span> | undefined;
  readonly uses: Use[];
  readonly findings: Finding[];
}

/** Most runs state nothing of their own. */
const NO_LINES: Origin["lines"] = new Map();

function read(heading: Heading, lines: readonly Line[], first: DirectiveLine): Block {
  const reading = openEntity(heading, first);
  const { findings, uses, entity } = reading;
  let index = 0;
  for (const line of lines) {
    if (line.findings.length > 0) placeFindings(line.findings, index, findings);
    if (index > 0 && line.kind === "directive") addProperty(reading, line, index);
    index++;
  }
  addTable(reading, lines);
  for (const keyword of heading.required) {
    if (!reading.origin.lines.has(keyword)) {
      const example = findProperty(heading.block, keyword)?.example ?? keyword;
      findings.push(raise(missingLine, reading.origin.heading, { block: heading.block, keyword, example }));
    }
  }
  return { heading, lines, entity, uses, findings };
}

/** Adds findings of a line to those of its block. */
function placeFindings(found: readonly Finding[], index: number, findings: Finding[]): void {
  for (const finding of found) findings.push(shiftedFinding(finding, index));
}

function openEntity(heading: Heading, line: DirectiveLine): Reading {
  const findings: Finding[] = [];
  const uses: Use[] = [];
  const bound = bind(heading, line);
  if (bound.findings.length > 0) placeFindings(bound.findings, 0, findings);
  const span = lineSpan(line, 0);
  const name = isReference(bound.values["id"]) ? bound.values["id"].span : span;
  const origin: Draft<Origin> = { heading: span, name, lines: NO_LINES };
  collectUses(heading, bound, 0, uses);
  const entity = heading.open(bound.values, origin);
  return { heading, entity, origin, lines: undefined, uses, findings };
}

function addProperty(reading: Reading, line: DirectiveLine, index: number): void {
  const form = findProperty(reading.heading.block, line.keyword.text);
  if (form === undefined) return;
  const span = lineSpan(line, index);
  const first = reading.lines?.get(form.keyword);
  if (first !== undefined && !form.repeatable) {
    const args = { what: `'${form.keyword}'`, where: reading.heading.block };
    const related = [{ span: first, message: "the first one" }];
    reading.findings.push(raise(repeatedLine, span, args, { related }));
    return;
  }
  if (first === undefined) addLine(reading, form.keyword, span);
  const bound = boundOf(form, line);
  placeFindings(bound.findings, index, reading.findings);
  collectUses(form, bound, index, reading.uses);
  if (bound.complete) form.lower(placed(form, bound, index), reading.entity, span);
}

function addLine(reading: Reading, keyword: string, span: Span): void {
  reading.lines ??= new Map();
  reading.origin.lines = reading.lines.set(keyword, span);
}

const bounds = new WeakMap<DirectiveLine, { readonly form: Form; readonly bound: Bound }>();

/** What a line says, read once: lines that read alike share their node, in all records. */
function boundOf(form: Form, line: DirectiveLine): Bound {
  const before = bounds.get(line);
  if (before?.form === form) return before.bound;
  const bound = bind(form, line);
  bounds.set(line, { form, bound });
  return bound;
}

/** The values with their references moved to the line that they stand on. */
function placed(form: Form, bound: Bound, index: number): Readonly<Record<string, unknown>> {
  if (form.layout.references.length === 0) return bound.values;
  const moved: Record<string, unknown> = { ...bound.values };
  for (const { name } of form.layout.references) {
    const value = moved[name];
    if (isReference(value)) moved[name] = { id: value.id, span: shifted(value.span, index) };
  }
  return moved;
}

function collectUses(form: Form, bound: Bound, index: number, uses: Use[]): void {
  for (const { name, to } of form.layout.references) {
    const value = bound.values[name];
    if (isReference(value)) uses.push({ kind: to, id: value.id, span: shifted(value.span, index) });
  }
}

function isReference(value: unknown): value is Reference {
  return typeof value === "object" && value !== null && "id" in value && "span" in value;
}

function addTable(reading: Reading, lines: readonly Line[]): void {
  const { heading, findings, origin, entity } = reading;
  const table = lowerTable(heading, lines, findings);
  if (table !== undefined && hasTable(entity)) entity.table = table;
  const missing = missingOf(heading, table, entity);
  if (missing.length === 0) return;
  const headed = table !== undefined && table.columns.length > 0;
  const columns = `column${missing.length === 1 ? "" : "s"} ${missing.join(" and ")}`;
  const what = headed ? columns : "line that names its columns";
  const example = missing.map(headOf).join("  ");
  const firstRow = lines.findIndex((line) => line.kind === "row");
  const span = firstRow < 0 || headed ? origin.heading : rowSpan(lines[firstRow], firstRow);
  findings.push(raise(missingColumns, span, { block: heading.block, missing: what, example }));
}

/** The columns that a block should have and has not; its rows alone are enough to ask for a head. */
function missingOf(heading: Heading, table: Table | undefined, entity: Draft<Entity>): readonly string[] {
  const needed = heading.columns;
  if (needed === undefined) return [];
  if (table === undefined || table.columns.length === 0) {
    if (table !== undefined && table.rows.length > 0 && needed.length === 0)
      return tableColumns(heading.block);
    return "log" in entity && entity.log !== undefined ? [] : needed;
  }
  return needed.filter((name) => !table.columns.some((column) => column.name === name));
}

/** The columns of the blocks whose table is optional but has always the same head. */
function tableColumns(block: BlockKind): readonly string[] {
  return block === "cam" ? ["angle", "lift"] : ["signal", "flow"];
}

const TABLELESS: ReadonlySet<BlockKind> = new Set(["plate", "engine", "head", "port", "session"]);

function hasTable(entity: Draft<Entity>): entity is Draft<Extract<Entity, { readonly table?: Table }>> {
  return !TABLELESS.has(entity.kind);
}

function lineSpan(line: DirectiveLine, index: number): Span {
  return { line: index, from: line.keyword.from, to: line.atoms.at(-1)?.to ?? line.keyword.to };
}

function rowSpan(line: Line | undefined, index: number): Span {
  const text = line?.text ?? "";
  return { line: index, from: text.length - text.trimStart().length, to: text.trimEnd().length };
}
