// What may be typed at a place: keywords, names, units, choices, dates and lifts, the likely first.
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { allowOffers } from "./allow-offers.ts";
import { commentOf } from "./comment-of.ts";
import { includeOffers, logOffers } from "./file-offers.ts";
import type { Judged } from "./findings.ts";
import { headingOffers, includeOffer, propertyOffers, versionOffers } from "./keyword-offers.ts";
import type { Offer } from "./offer.ts";
import { formOf, keywordOf, type OpenLine, openLine } from "./open-line.ts";
import type { Position } from "./position.ts";
import { columnOffers, dimensionsInBracket, liftOffers, rowOffers } from "./table-offers.ts";
import { textOffers } from "./text-offers.ts";
import { slotOffers, unitOffers } from "./value-offers.ts";

export interface Completion extends Offer {
  /** The stretch of the line that it takes the place of. */
  readonly from: number;
  readonly to: number;
}

/** What completion needs beside the file. */
export interface CompletionContext {
  /** The time as `YYYY-MM-DDTHH:MM` with the zone's offset. */
  readonly now: string;
  /** Paths of the workspace's records, for an include, or of its logs, for a trace. */
  readonly paths: readonly string[];
  /** What stands in the log that the line names. */
  readonly log?: string | undefined;
  /** What was found in the file. */
  readonly findings: () => readonly Judged[];
  /** The character that made the editor ask, where the user did not. */
  readonly trigger?: string | undefined;
}

/** What may be typed at a place, the likeliest first. */
export function completion(
  analysis: Analysis,
  position: Position,
  { now, paths, log, findings, trigger }: CompletionContext,
): readonly Completion[] {
  const { scope } = analysis;
  const text = scope.file.outline.lines[position.line]?.text ?? "";
  const comment = commentOf(text.slice(0, position.column));
  if (comment !== undefined) {
    // A comment is begun with a blank; a list that opens by itself would take the word behind it.
    const isUnasked = trigger === " " && comment.trim() === "#";
    return isUnasked ? [] : allowOffers(analysis, findings, position, comment);
  }
  const open = openLine(scope.file.outline, position);
  // Blanks are typed to indent and to align; a list that opens by itself would take the Enter behind them.
  if (trigger === " " && !open.isQuoted && /^\s*([-\d.]|$)/.test(open.before)) return [];
  const offers = open.isQuoted ? quotedOffers(scope, open, paths, log) : offersAt(analysis, open, now);
  return offers.map((offer) => ({ ...offer, ...open.place }));
}

function quotedOffers(
  scope: Scope,
  open: OpenLine,
  paths: readonly string[],
  log: string | undefined,
): readonly Offer[] {
  if (keywordOf(open) === "include") return includeOffers(scope, paths);
  const form = formOf(open);
  if (form === undefined) return [];
  return form.keyword === "log" ? logOffers(scope, form, open, paths, log) : textOffers(scope, form, open);
}

function offersAt(analysis: Analysis, open: OpenLine, now: string): readonly Offer[] {
  const { before, behind } = open;
  if (before.trim() === "") return lineOffers(analysis, open);
  if (/\[[^\]]*$/.test(before)) return unitOffers(analysis, dimensionsInBracket(open));
  const form = formOf(open);
  if (form !== undefined) return slotOffers(analysis, form, open, now);
  if (/^\s*[a-z]+\s*\[/.test(before)) return columnOffers(analysis, open, before + behind);
  return rowOffers(analysis, open);
}

/** What a line may begin with: at the margin a heading is likelier, further in what belongs to the block. */
function lineOffers(analysis: Analysis, open: OpenLine): readonly Offer[] {
  const { before, placed } = open;
  const entity = placed?.block.entity;
  const hasTable = entity !== undefined && "table" in entity && entity.table !== undefined;
  const inBlock = [
    ...liftOffers(analysis, open),
    ...propertyOffers(placed, open.line),
    ...(hasTable ? [] : columnOffers(analysis, open, open.behind)),
  ];
  const { outline } = analysis.scope.file;
  const others = [...versionOffers(outline, open.line), ...headingOffers(outline, open.line), includeOffer];
  return /^\s/.test(before) ? [...inBlock, ...others] : [...others, ...inBlock];
}
