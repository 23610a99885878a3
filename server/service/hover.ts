// What stands under the cursor, in words and numbers.
import { bind } from "../../grammar/bind.ts";
import { findColumn } from "../../grammar/columns.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import { signature } from "../../grammar/signature.ts";
import type { ColumnsLine, DirectiveLine } from "../../grammar/tree.ts";
import { dimensionName } from "../../shared/quantity/dimension.ts";
import type { Quantity } from "../../shared/quantity/quantity.ts";
import { findUnit, fromSI, type Unit, unitsOf } from "../../shared/quantity/unit.ts";
import { runFacts } from "../../shared/render/run-facts.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Analysis } from "../analysis/project.ts";
import { findKind } from "../catalogue.ts";
import { figures } from "../rules/words.ts";
import { blockAt, lineAt } from "./line-at.ts";
import { code, escaped } from "./markdown.ts";
import { nameAt } from "./names.ts";
import { isAt, type Position } from "./position.ts";
import { rowAt, runAt } from "./row-at.ts";
import { rowHover } from "./row-hover.ts";

export interface Hover {
  /** Markdown in which all text of the record is escaped. */
  readonly text: string;
  readonly span: Span;
}

export function hover(analysis: Analysis, position: Position): Hover | undefined {
  const { outline } = analysis.scope.file;
  const line = lineAt(outline, position.line);
  if (line === undefined) return undefined;
  switch (line.kind) {
    case "row":
      return hoverRow(analysis, position);
    case "columns":
      return hoverColumns(line, position);
    case "directive":
      return hoverName(analysis, position) ?? hoverDirective(analysis, line, position);
    default:
      return hoverAllow(line.text, position);
  }
}

function hoverRow(analysis: Analysis, position: Position): Hover | undefined {
  const found = rowAt(analysis, position.line);
  if (found === undefined) return undefined;
  const { row } = found.row;
  const from = row.bounds[0] ?? 0;
  return { text: rowHover(found.run, found.row), span: { line: position.line, from, to: row.to } };
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
  const name = nameAt(analysis.scope.file, position);
  const placed = name && analysis.scope.locate(name.kind, name.id);
  if (name === undefined || placed === undefined) return undefined;
  const { entity, path, start } = placed;
  const title = "title" in entity && entity.title !== undefined ? ` — ${escaped(entity.title)}` : "";
  const file = analysis.scope.files.find((each) => each.path === path);
  const block = file && blockAt(file.outline, start)?.block;
  const lines = block?.lines.map((line) => line.text).filter((text) => text.trim() !== "") ?? [];
  const shown = lines.slice(0, MOST_LINES);
  const rest = lines.length > shown.length ? ["  # …"] : [];
  const run =
    name.role === "definition" && entity.kind === "run" ? runAt(analysis, position.line) : undefined;
  const facts = run === undefined ? "" : `\n\n${settledText(analysis, position.line)}`;
  return {
    text: `**${name.kind} ${escaped(name.id)}**${title}\n\n${code([...shown, ...rest])}${facts}`,
    span: name.span,
  };
}

/** Blocks are shown as they are written, but no longer than a screen likes. */
const MOST_LINES = 12;

/** What a run stands on, and what of it nobody stated. */
function settledText(analysis: Analysis, line: number): string {
  const run = runAt(analysis, line);
  if (run === undefined) return "";
  return runFacts(analysis.compute(run))
    .map(({ label, words }) => `- ${label}: ${escaped(words)}`)
    .join("\n");
}

function hoverDirective(analysis: Analysis, line: DirectiveLine, position: Position): Hover | undefined {
  const { keyword } = line;
  const block = blockAt(analysis.scope.file.outline, position.line);
  const isHeading = block?.start === position.line;
  const form = isHeading
    ? findHeading(keyword.text)
    : block && findProperty(block.block.heading.block, keyword.text);
  if (form === undefined) return undefined;
  const keywordSpan = { line: position.line, from: keyword.from, to: keyword.to };
  if (isAt(keywordSpan, position)) {
    return { text: `${code([signature(form)])}\n${form.doc}\n\n${code([form.example])}`, span: keywordSpan };
  }
  const bound = bind(form, line);
  for (const [slot, place] of Object.entries(bound.places)) {
    const span = { line: position.line, ...place };
    const value = bound.values[slot];
    if (isAt(span, position) && isQuantity(value)) return { text: quantityText(value), span };
  }
  return undefined;
}

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

function unitText(unit: Unit): string {
  const measures = unit.dimensions.map(dimensionName).join(" or ");
  const zero = unit.offset === 0 ? "" : ` (from ${unit.offset} below its zero)`;
  return `**${unit.symbol}** — ${measures}; 1 ${unit.symbol} = ${unit.factor} ${unit.si}${zero}\n\n${unit.source}`;
}

function hoverAllow(text: string, position: Position): Hover | undefined {
  const match = /#\s*allow\s+([a-z0-9-]+)/.exec(text);
  const kind = match?.[1] === undefined ? undefined : findKind(match[1]);
  if (match === null || kind === undefined) return undefined;
  const from = match.index + match[0].length - kind.code.length;
  const span = { line: position.line, from, to: from + kind.code.length };
  return isAt(span, position) ? { text: `**${kind.code}** — ${kind.what}\n\n${kind.why}`, span } : undefined;
}
