// What may be typed at a place: keywords, names, units, choices, dates and lifts, the likely first.
import { columnsWithin } from "../../grammar/columns.ts";
import type { Form, Property } from "../../grammar/directive.ts";
import {
  findHeading,
  findProperty,
  headingKeywords,
  propertyKeywords,
} from "../../grammar/directives/index.ts";
import { FILE_KEYWORDS } from "../../grammar/outline.ts";
import { signature } from "../../grammar/signature.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import type { BlockKind, NamedKind } from "../../shared/model/model.ts";
import { type Dimension, dimensionName } from "../../shared/quantity/dimension.ts";
import { unitsOf } from "../../shared/quantity/unit.ts";
import { quantityWords } from "../../shared/render/run-facts.ts";
import { folderOf, relativePath } from "../../shared/text/path.ts";
import type { Analysis } from "../analysis/project.ts";
import { isNamed } from "../analysis/source-file.ts";
import { blockAt } from "./line-at.ts";
import type { Position } from "./position.ts";
import { type SlotAt, slotsAfter } from "./slot-at.ts";

export interface Completion {
  readonly label: string;
  readonly insert: string;
  readonly kind: "keyword" | "name" | "unit" | "choice" | "value" | "column" | "file";
  readonly detail: string;
  /** The stretch of the line that it takes the place of. */
  readonly from: number;
  readonly to: number;
}

/** What completion needs beside the file. */
export interface CompletionContext {
  /** Today as `YYYY-MM-DD`. */
  readonly today: string;
  /** Paths of the workspace's records, for includes. */
  readonly paths: readonly string[];
}

type Offer = Omit<Completion, "from" | "to">;

/** What may be typed at a place, the likeliest first. */
export function completion(
  analysis: Analysis,
  position: Position,
  context: CompletionContext,
): readonly Completion[] {
  const { outline } = analysis.scope.file;
  const text = outline.lines[position.line]?.text ?? "";
  const typed = text.slice(0, position.column);
  if (/(?<!\S)#/.test(typed) || insideText(typed, text))
    return completeText(analysis, typed, text, position, context);
  const word = /[^\s"[\]]*$/.exec(typed)?.[0] ?? "";
  const from = position.column - word.length;
  const tail = /^[^\s"[\]]*/.exec(text.slice(position.column))?.[0] ?? "";
  const place = { from, to: position.column + tail.length };
  const before = text.slice(0, from);
  const offers = offersAt(analysis, before, position.line, context);
  return offers.map((offer) => ({ ...offer, ...place }));
}

function offersAt(
  analysis: Analysis,
  before: string,
  line: number,
  context: CompletionContext,
): readonly Offer[] {
  const block = ownBlock(analysis, before, line);
  if (before.trim() === "") return keywordOffers(analysis, block, before, line);
  if (/\[[^\]]*$/.test(before)) return unitOffers(analysis, columnDimensions(before, block));
  const keyword = /^\s*(\S+)/.exec(before)?.[1] ?? "";
  const form = formOf(block, keyword);
  if (form !== undefined) return slotOffers(analysis, form, before, context);
  if (block !== undefined && /^\s*[a-z]+\s*\[/.test(before)) return columnOffers(block, before);
  return rowOffers(analysis, before, line);
}

/** The block that a line belongs to: the one above, unless the line itself opens one. */
function ownBlock({ scope }: Analysis, before: string, line: number): BlockKind | undefined {
  const placed = blockAt(scope.file.outline, line);
  if (placed === undefined) return undefined;
  const above = placed.start === line ? blockAt(scope.file.outline, line - 1) : placed;
  return before.trim() === "" || placed.start !== line ? above?.block.entity.kind : undefined;
}

function formOf(block: BlockKind | undefined, keyword: string): Form | undefined {
  return (block && findProperty(block, keyword)) ?? findHeading(keyword);
}

// --- keywords -----------------------------------------------------------------------------------------

function keywordOffers(
  analysis: Analysis,
  block: BlockKind | undefined,
  before: string,
  line: number,
): readonly Offer[] {
  const placed = blockAt(analysis.scope.file.outline, line);
  const stated = placed?.block.entity.origin.lines;
  const required = (block && findHeading(block)?.required) ?? [];
  const own = block === undefined ? [] : propertyKeywords(block);
  const rank = (keyword: string) => (stated?.has(keyword) ? 2 : required.includes(keyword) ? 0 : 1);
  const properties = [...own]
    .filter((keyword) => !stated?.has(keyword) || (block && isRepeatable(findProperty(block, keyword))))
    .sort((a, b) => rank(a) - rank(b))
    .map((keyword) => keywordOffer(keyword, block && findProperty(block, keyword)));
  const columns =
    block !== undefined && columnsWithin(block).length > 0 && findHeading(block)?.columns !== undefined
      ? columnOffers(block, before)
      : [];
  const headings = headingKeywords.map((keyword) => keywordOffer(keyword, findHeading(keyword)));
  const file = FILE_KEYWORDS.map((keyword): Offer => {
    const insert = keyword === "headnote" ? "headnote 1" : `${keyword} `;
    return {
      label: keyword,
      insert,
      kind: "keyword",
      detail: keyword === "headnote" ? "version of the format" : 'include "path"',
    };
  });
  const isIndented = /^\s/.test(before);
  return isIndented
    ? [...properties, ...columns, ...headings]
    : [...headings, ...file, ...properties, ...columns];
}

function isRepeatable(form: Property | undefined): boolean {
  return form?.repeatable === true;
}

function keywordOffer(keyword: string, form: Form | undefined): Offer {
  const detail = form === undefined ? "" : signature(form);
  return { label: keyword, insert: `${keyword} `, kind: "keyword", detail };
}

// --- values -------------------------------------------------------------------------------------------

function slotOffers(
  analysis: Analysis,
  form: Form,
  before: string,
  context: CompletionContext,
): readonly Offer[] {
  const { slots, words } = slotsAfter(form, before);
  const values = slots.flatMap((slot) => valueOffers(analysis, slot, context));
  const named = words.map(
    (word): Offer => ({ label: word, insert: `${word} `, kind: "keyword", detail: form.keyword }),
  );
  return [...values, ...named];
}

function valueOffers(
  analysis: Analysis,
  { slot, hasNumber }: SlotAt,
  { today }: CompletionContext,
): readonly Offer[] {
  const { type } = slot;
  switch (type.kind) {
    case "reference":
      return nameOffers(analysis, type.to);
    case "quantity":
      if (hasNumber) return unitOffers(analysis, [type.dimension]);
      return type.or === undefined
        ? []
        : [{ label: type.or, insert: type.or, kind: "choice", detail: "there is none" }];
    case "choice":
      return type.of.map((label) => ({ label, insert: label, kind: "choice", detail: "" }));
    case "date":
      return [{ label: today, insert: today, kind: "value", detail: "today" }];
    case "air":
      return referenceAirs.map(({ name, source }) => ({
        label: name,
        insert: name,
        kind: "choice",
        detail: source,
      }));
    default:
      return [];
  }
}

/** Names of a kind that the file sees; those used most in it first. */
function nameOffers({ scope }: Analysis, kind: NamedKind): readonly Offer[] {
  const uses = new Map<string, number>();
  for (const { block } of scope.file.outline.blocks) {
    for (const use of block.uses) if (use.kind === kind) uses.set(use.id, (uses.get(use.id) ?? 0) + 1);
  }
  const known = scope.files.flatMap((file) => [...(file.defines.get(kind)?.values() ?? [])]);
  return known
    .flatMap(({ entity }): Offer[] => {
      if (!isNamed(entity)) return [];
      return [{ label: entity.id, insert: entity.id, kind: "name", detail: entity.title ?? kind }];
    })
    .map((offer, index) => ({ offer, index, used: uses.get(offer.label) ?? 0 }))
    .sort((a, b) => b.used - a.used || a.index - b.index)
    .map(({ offer }) => offer);
}

/** Units of the dimensions; those that the file writes most first. */
function unitOffers({ scope }: Analysis, dimensions: readonly Dimension[]): readonly Offer[] {
  const text = scope.file.text.slice(0, MOST_SEARCHED);
  const count = (symbol: string) =>
    text.split(new RegExp(`[\\s[]${escapedPattern(symbol)}(?=[\\s\\]])`)).length - 1;
  const units = [...new Set(dimensions.flatMap(unitsOf))];
  return units
    .map((unit, index) => ({ unit, index, used: count(unit.symbol) }))
    .sort((a, b) => b.used - a.used || a.index - b.index)
    .map(({ unit }): Offer => {
      const detail = unit.dimensions.map(dimensionName).join(" or ");
      return { label: unit.symbol, insert: unit.symbol, kind: "unit", detail };
    });
}

/** Enough of a file to see which units it writes. */
const MOST_SEARCHED = 20_000;

function escapedPattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
}

// --- tables -------------------------------------------------------------------------------------------

function columnOffers(block: BlockKind, before: string): readonly Offer[] {
  return columnsWithin(block)
    .filter(({ name }) => !new RegExp(`(?<!\\S)${name}(?![a-z-])`).test(before))
    .map(({ name, doc, example }) => ({ label: name, insert: example[0], kind: "column", detail: doc }));
}

function columnDimensions(before: string, block: BlockKind | undefined): readonly Dimension[] {
  const name = /([A-Za-z-]+)\s*\[[^\]]*$/.exec(before)?.[1];
  return (block && columnsWithin(block).find((column) => column.name === name)?.dimensions) ?? [];
}

/** Behind the cells of a row: its ranges where the column takes them, and the mark of a void one. */
function rowOffers(analysis: Analysis, before: string, line: number): readonly Offer[] {
  const run = analysis.settled.findLast(({ placed }) => placed.start < line);
  const table = run?.setup.run.table;
  if (run === undefined || table === undefined || !/^\s*[-\d.]/.test(before)) return [];
  const count = before.trim().split(/\s+/).length;
  if (table.columns[count]?.name === "range") {
    const ranges = run.setup.bench?.ranges ?? [];
    return ranges.map(({ name, flow }) => ({
      label: name,
      insert: name,
      kind: "name",
      detail: quantityWords(flow),
    }));
  }
  if (count < table.columns.length) return [{ label: "-", insert: "-", kind: "value", detail: "not read" }];
  return [{ label: "void", insert: 'void ""', kind: "keyword", detail: "keep the row but do not use it" }];
}

// --- texts --------------------------------------------------------------------------------------------

function insideText(typed: string, text: string): boolean {
  const quotes = typed.match(/(?<!\\)"/g)?.length ?? 0;
  return quotes % 2 === 1 && text.length > 0;
}

/** In quotes: the files that can be included, and the stages that were named before. */
function completeText(
  { scope }: Analysis,
  typed: string,
  text: string,
  position: Position,
  { paths }: CompletionContext,
): readonly Completion[] {
  const from = typed.lastIndexOf('"') + 1;
  const end = text.indexOf('"', position.column);
  const to = end < 0 ? text.length : end;
  const place = { from, to };
  if (/^\s*include\s+"[^"]*$/.test(typed)) {
    const folder = folderOf(scope.file.path);
    const known = new Set(scope.includes.map(({ path }) => path));
    return paths
      .filter((path) => path !== scope.file.path && !known.has(path))
      .map((path) => relativePath(folder, path))
      .sort((a, b) => a.length - b.length || (a < b ? -1 : 1))
      .map((path) => ({ label: path, insert: path, kind: "file", detail: "", ...place }));
  }
  if (/^\s*stage\s+"[^"]*$/.test(typed)) {
    const stages = scope.files.flatMap((file) => file.runs.flatMap(({ entity }) => entity.stage ?? []));
    return [...new Set(stages)].map((stage) => ({
      label: stage,
      insert: stage,
      kind: "value",
      detail: "stage",
      ...place,
    }));
  }
  return [];
}
