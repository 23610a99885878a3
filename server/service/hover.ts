// What stands under the cursor, in words and numbers.
import { bind } from "../../grammar/bind.ts";
import { findColumn } from "../../grammar/columns.ts";
import type { Form } from "../../grammar/directive.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import { findFileLine } from "../../grammar/file-lines.ts";
import { signature } from "../../grammar/signature.ts";
import type { ColumnsLine, DirectiveLine, Line } from "../../grammar/tree.ts";
import { namedAir } from "../../shared/calc/air-state.ts";
import { findReferenceAir } from "../../shared/calc/reference-air.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import type { Quantity } from "../../shared/quantity/quantity.ts";
import { findUnit, fromSI, unitsOf } from "../../shared/quantity/unit.ts";
import { folderOf, relativePath } from "../../shared/text/path.ts";
import type { Span } from "../../shared/text/span.ts";
import { allowedCode } from "../analysis/allow.ts";
import type { Analysis } from "../analysis/project.ts";
import { tracesOfRun } from "../analysis/traces.ts";
import { findKind } from "../catalogue.ts";
import { figures } from "../rules/words.ts";
import { fileHover } from "./file-hover.ts";
import { kindText } from "./kind-text.ts";
import { blockAt, lineAt } from "./line-at.ts";
import { code, escaped } from "./markdown.ts";
import { nameAt } from "./names.ts";
import { pairHovers } from "./pair-hover.ts";
import { isAt, type Position } from "./position.ts";
import { rowAt, runAt } from "./row-at.ts";
import { rowHover } from "./row-hover.ts";
import { runHover } from "./run-hover.ts";
import { traceHover } from "./trace-hover.ts";
import { unitText } from "./unit-words.ts";

export interface Hover {
  /** Markdown in which all text of the record is escaped. */
  readonly text: string;
  readonly span: Span;
}

export function hover(analysis: Analysis, position: Position): Hover | undefined {
  const { outline } = analysis.scope.file;
  const line = lineAt(outline, position.line);
  return line && (hoverAllow(line.text, position) ?? hoverLine(analysis, line, position));
}

function hoverLine(analysis: Analysis, line: Line, position: Position): Hover | undefined {
  switch (line.kind) {
    case "row":
      return hoverRow(analysis, position);
    case "columns":
      return hoverColumns(line, position);
    case "directive":
      return (
        hoverName(analysis, position) ??
        fileHover(analysis, position) ??
        hoverDirective(analysis, line, position)
      );
    default:
      return undefined;
  }
}

function hoverRow(analysis: Analysis, position: Position): Hover | undefined {
  const found = rowAt(analysis, position.line);
  if (found === undefined) return undefined;
  const { row } = found.row;
  const from = row.bounds[0] ?? 0;
  const traces = () => tracesOfRun(analysis.traces, found.run.placed);
  return { text: rowHover(found.run, found.row, traces), span: { line: position.line, from, to: row.to } };
}

function hoverColumns(line: ColumnsLine, position: Position): Hover | undefined {
  for (const { name, unit } of line.heads) {
    const nameSpan = { line: position.line, from: name.from, to: name.to };
    const column = findColumn(name.text);
    if (isAt(nameSpan, position) && column !== undefined) {
      return { text: `**${column.name}** — ${column.doc}`, span: nameSpan };
    }
    const found = unit && findUnit(unit.text);
    if (unit === undefined || found === undefined) continue;
    const span = { line: position.line, from: unit.from, to: unit.to };
    if (isAt(span, position)) return { text: unitText(found.unit), span };
  }
  return undefined;
}

function hoverName(analysis: Analysis, position: Position): Hover | undefined {
  const { scope } = analysis;
  const name = nameAt(scope.file, position);
  const placed = name && scope.locate(name.kind, name.id);
  if (name === undefined || placed === undefined) return undefined;
  const { entity, path, start } = placed;
  const title = "title" in entity && entity.title !== undefined ? ` — ${escaped(entity.title)}` : "";
  const file = scope.files.find((each) => each.path === path);
  const block = file && blockAt(file.outline, start)?.block;
  const end = (block?.lines.findLastIndex(({ kind }) => kind !== "blank") ?? -1) + 1;
  const texts = block?.lines.slice(0, end).map((line) => line.text) ?? [];
  const lines = texts.filter((text) => text.trim() !== "");
  const shown = lines.slice(0, MOST_LINES);
  const rest = lines.length > shown.length ? ["  # …"] : [];
  const head = `**${name.kind} ${escaped(name.id)}**${title}`;
  const parts =
    name.role === "definition"
      ? [head, code([...shown, ...rest]), ...settledText(analysis, position.line)]
      : [head, code([...shown, ...rest]), placeText(scope.file.path, path, start)];
  return { text: parts.join("\n\n"), span: name.span };
}

/** Where something is defined, as seen from a file. */
function placeText(from: string, path: string, start: number): string {
  const file = path === from ? "" : ` of ${escaped(relativePath(folderOf(from), path))}`;
  return `defined in line ${start + 1}${file}`;
}

/** Blocks are shown as they are written, but no longer than a screen likes. */
const MOST_LINES = 12;

/** What a run stands on, or what a trace or ladder gives, if a line is its heading. */
function settledText(analysis: Analysis, line: number): readonly string[] {
  const trace = traceHover(analysis, line);
  if (trace !== undefined) return [trace];
  const run = runAt(analysis, line);
  if (run?.placed.start !== line) return [];
  return [runHover(analysis.compute(run)), ...pairHovers(analysis, run)];
}

function hoverDirective(analysis: Analysis, line: DirectiveLine, position: Position): Hover | undefined {
  const { keyword } = line;
  const block = blockAt(analysis.scope.file.outline, position.line);
  const isHeading = block?.start === position.line;
  const form = isHeading
    ? findHeading(keyword.text)
    : block && findProperty(block.block.heading.block, keyword.text);
  if (form === undefined) return hoverFileLine(line, position);
  const span = { line: position.line, from: keyword.from, to: keyword.to };
  if (isAt(span, position)) {
    const parts = [code([signature(form)]), form.doc, code([form.example])];
    return { text: [...parts, ...settledText(analysis, position.line)].join("\n\n"), span };
  }
  return hoverValue(form, line, position);
}

/** Of the version line or an include. */
function hoverFileLine({ keyword }: DirectiveLine, position: Position): Hover | undefined {
  const line = findFileLine(keyword.text);
  const span = { line: position.line, from: keyword.from, to: keyword.to };
  return line === undefined || !isAt(span, position)
    ? undefined
    : { text: [code([line.signature]), line.doc, code([line.example])].join("\n\n"), span };
}

function hoverValue(form: Form, line: DirectiveLine, position: Position): Hover | undefined {
  const { values, places } = bind(form, line);
  for (const [slot, place] of Object.entries(places)) {
    const span = { line: position.line, ...place };
    const value = values[slot];
    if (!isAt(span, position)) continue;
    if (isQuantity(value)) return hoverQuantity(value, line, span, position);
    const kind = form.slots[slot]?.type.kind;
    const text =
      kind === "air"
        ? airText(value)
        : kind === "choice"
          ? `**${escaped(String(value))}** — ${form.doc}`
          : undefined;
    return text === undefined ? undefined : { text, span };
  }
  return undefined;
}

/** On the number what it is in other units, on the unit behind it what that is. */
function hoverQuantity(value: Quantity, { atoms }: DirectiveLine, span: Span, position: Position): Hover {
  const last = atoms.find(({ to }) => to === span.to);
  const isOnUnit = last !== undefined && last.from > span.from && position.column >= last.from;
  return isOnUnit
    ? { text: unitText(value.unit), span: { ...span, from: last.from } }
    : { text: quantityText(value), span };
}

/** A named reference air, and the density that results are referred to. */
function airText(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null || !("name" in value)) return undefined;
  const found = typeof value.name === "string" ? findReferenceAir(value.name) : undefined;
  const density = found && namedAir(found)?.state.density;
  return density === undefined
    ? undefined
    : `**${found?.name}** — ${found?.source}; ${formatFixed(density, DENSITY_DECIMALS)} kg/m3`;
}

const DENSITY_DECIMALS = 4;

function isQuantity(value: unknown): value is Quantity {
  return typeof value === "object" && value !== null && "unit" in value && "step" in value;
}

/** As written, in SI, and in the units that others would write. */
function quantityText({ text, unit, value }: Quantity): string {
  const others = unitsOf(unit.dimensions[0] ?? "ratio").filter(
    (other) => other.si === unit.si && other.symbol !== unit.symbol,
  );
  const list = others.map((other) => `${figures(fromSI(value, other))} ${other.symbol}`);
  return `**${escaped(text)} ${unit.symbol}**${list.length === 0 ? "" : ` = ${list.join(" = ")}`}`;
}

function hoverAllow(text: string, position: Position): Hover | undefined {
  const found = allowedCode(text);
  const kind = found && findKind(found.code);
  if (found === undefined || kind === undefined) return undefined;
  const span = { line: position.line, from: found.from, to: found.to };
  return isAt(span, position) ? { text: kindText(kind), span } : undefined;
}
