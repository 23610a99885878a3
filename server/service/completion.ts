// What may be typed at a place: keywords, names, units, choices, dates and lifts, the likely first.
import type { Form } from "../../grammar/directive.ts";
import { findHeading, findProperty } from "../../grammar/directives/index.ts";
import type { Outline, PlacedBlock } from "../../grammar/outline.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { allowOffers } from "./allow-offers.ts";
import { commentOf } from "./comment-of.ts";
import type { Judged } from "./findings.ts";
import { isInsideText } from "./inside-text.ts";
import { headingOffers, includeOffer, propertyOffers, versionOffers } from "./keyword-offers.ts";
import { blockAt } from "./line-at.ts";
import type { Offer } from "./offer.ts";
import type { Position } from "./position.ts";
import { columnOffers, dimensionsInBracket, liftOffers, rowOffers } from "./table-offers.ts";
import { includeOffers, textOffers } from "./text-offers.ts";
import { type OpenLine, slotOffers, unitOffers } from "./value-offers.ts";

export interface Completion extends Offer {
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
  /** What was found in the file. */
  readonly findings: () => readonly Judged[];
  /** The character that made the editor ask, where the user did not. */
  readonly trigger?: string | undefined;
}

/** What may be typed at a place, the likeliest first. */
export function completion(
  analysis: Analysis,
  position: Position,
  { today, paths, findings, trigger }: CompletionContext,
): readonly Completion[] {
  const { scope } = analysis;
  const text = scope.file.outline.lines[position.line]?.text ?? "";
  const typed = text.slice(0, position.column);
  const comment = commentOf(typed);
  if (comment !== undefined) {
    // A comment is begun with a blank; a list that opens by itself would take the word behind it.
    const isUnasked = trigger === " " && comment.trim() === "#";
    return isUnasked ? [] : allowOffers(analysis, findings, position, comment);
  }
  if (isInsideText(typed)) {
    const from = typed.lastIndexOf('"') + 1;
    const end = text.indexOf('"', position.column);
    const place = { from, to: end < 0 ? text.length : end };
    const offers = quotedOffers(scope, position.line, text.slice(0, from - 1), paths);
    return offers.map((offer) => ({ ...offer, ...place }));
  }
  const word = /[^\s"[\]]*$/.exec(typed)?.[0] ?? "";
  const tail = /^[^\s"[\]]*/.exec(text.slice(typed.length))?.[0] ?? "";
  const place = { from: typed.length - word.length, to: typed.length + tail.length };
  const before = text.slice(0, place.from);
  // Blanks are typed to indent and to align; a list that opens by itself would take the Enter behind them.
  if (trigger === " " && /^\s*([-\d.]|$)/.test(before)) return [];
  const open = { line: position.line, before, placed: openBlock(scope.file.outline, position.line, before) };
  const offers = offersAt(analysis, open, text.slice(place.to), today);
  return offers.map((offer) => ({ ...offer, ...place }));
}

/** What may stand in a text that is opened behind `before`. */
function quotedOffers(
  scope: Scope,
  line: number,
  before: string,
  paths: readonly string[],
): readonly Offer[] {
  if (/^\s*include\s*$/.test(before)) return includeOffers(scope, paths);
  const form = formOf(openBlock(scope.file.outline, line, before), keywordOf(before));
  return form === undefined ? [] : textOffers(scope, form, line, before);
}

function keywordOf(before: string): string {
  return /^\s*(\S+)/.exec(before)?.[1] ?? "";
}

function offersAt(analysis: Analysis, open: OpenLine, behind: string, today: string): readonly Offer[] {
  const { before, placed } = open;
  if (before.trim() === "") return lineOffers(analysis, open, behind);
  if (/\[[^\]]*$/.test(before)) return unitOffers(analysis, dimensionsInBracket(open));
  const form = formOf(placed, keywordOf(before));
  if (form !== undefined) return slotOffers(analysis, form, open, today);
  if (/^\s*[a-z]+\s*\[/.test(before)) return columnOffers(analysis, open, before + behind);
  return rowOffers(analysis, open);
}

/** What a line may begin with: at the margin a heading is likelier, further in what belongs to the block. */
function lineOffers(analysis: Analysis, open: OpenLine, behind: string): readonly Offer[] {
  const { before, placed } = open;
  const entity = placed?.block.entity;
  const hasTable = entity !== undefined && "table" in entity && entity.table !== undefined;
  const inBlock = [
    ...liftOffers(analysis, open),
    ...propertyOffers(placed),
    ...(hasTable ? [] : columnOffers(analysis, open, behind)),
  ];
  const { outline } = analysis.scope.file;
  const others = [...versionOffers(outline, open.line), ...headingOffers(), includeOffer];
  return /^\s/.test(before) ? [...inBlock, ...others] : [...others, ...inBlock];
}

/** The block that a line stands in: for a heading's first word the one above, for the rest of a heading none. */
function openBlock(outline: Outline, line: number, before: string): PlacedBlock | undefined {
  const placed = blockAt(outline, line);
  if (placed?.start !== line) return placed;
  return before.trim() === "" ? blockAt(outline, line - 1) : undefined;
}

function formOf(placed: PlacedBlock | undefined, keyword: string): Form | undefined {
  return (placed && findProperty(placed.block.heading.block, keyword)) ?? findHeading(keyword);
}
