// The words that a line may begin with: what its block takes and has not, and what opens another block.
import type { Form } from "../../grammar/directive.ts";
import {
  findHeading,
  findProperty,
  headingKeywords,
  propertyKeywords,
} from "../../grammar/directives/index.ts";
import { findFileLine } from "../../grammar/file-lines.ts";
import type { Outline, PlacedBlock } from "../../grammar/outline.ts";
import { signature } from "../../grammar/signature.ts";
import { code } from "./markdown.ts";
import type { Offer } from "./offer.ts";

/**
 * Properties of the open block: the required ones first, then those not stated, then those that may stand again. What the
 * line itself states counts for nothing, since it is being changed.
 */
export function propertyOffers(placed: PlacedBlock | undefined, line: number): readonly Offer[] {
  if (placed === undefined) return [];
  const { heading, entity } = placed.block;
  const isStated = (keyword: string): boolean => {
    const stated = entity.origin.lines.get(keyword);
    return stated !== undefined && placed.start + stated.line !== line;
  };
  const rank = (keyword: string) => (isStated(keyword) ? 2 : heading.required.includes(keyword) ? 0 : 1);
  return propertyKeywords(heading.block)
    .map((keyword) => ({ keyword, form: findProperty(heading.block, keyword) }))
    .filter(({ keyword, form }) => !isStated(keyword) || form?.repeatable === true)
    .sort((a, b) => rank(a.keyword) - rank(b.keyword))
    .flatMap(({ form }) => (form === undefined ? [] : [keywordOffer(form)]));
}

/** What readings stand in, which is what follows a session. */
const READINGS = ["run", "plate-check", "trace", "ladder", "map"];

/** What the file has most of comes first, and in a session's file what readings stand in; one session is enough. */
export function headingOffers({ blocks }: Outline, line: number): readonly Offer[] {
  const counts = new Map<string, number>();
  for (const { start, block } of blocks) {
    if (start !== line) counts.set(block.entity.kind, (counts.get(block.entity.kind) ?? 0) + 1);
  }
  const count = (keyword: string): number => counts.get(keyword) ?? 0;
  const hasSession = count("session") > 0;
  const isLater = (keyword: string): boolean => hasSession !== READINGS.includes(keyword);
  return headingKeywords
    .filter((keyword) => keyword !== "session" || !hasSession)
    .toSorted((a, b) => count(b) - count(a) || Number(isLater(a)) - Number(isLater(b)))
    .flatMap((keyword) => {
      const form = findHeading(keyword);
      return form === undefined ? [] : [keywordOffer(form)];
    });
}

/** The version line, where nothing stands above it. */
export function versionOffers({ lines }: Outline, line: number): readonly Offer[] {
  const first = lines.findIndex(({ kind }) => kind !== "blank");
  if (first >= 0 && first < line) return [];
  return [{ ...fileOffer("headnote"), insert: "headnote 1" }];
}

export const includeOffer: Offer = { ...fileOffer("include"), insert: "include ", snippet: 'include "$1"' };

function fileOffer(keyword: string): Omit<Offer, "insert"> {
  const line = findFileLine(keyword);
  return {
    label: keyword,
    kind: "keyword",
    detail: line?.signature ?? keyword,
    ...(line !== undefined && { documentation: `${line.doc}\n\n${code([line.example])}` }),
  };
}

function keywordOffer(form: Form): Offer {
  const { keyword, doc, example } = form;
  const [first] = Object.values(form.slots);
  const isText = first?.type.kind === "text" && !first.optional && first.word === undefined;
  return {
    label: keyword,
    insert: `${keyword} `,
    ...(isText && { snippet: `${keyword} "$1"` }),
    kind: "keyword",
    detail: signature(form),
    documentation: `${doc}\n\n${code([example])}`,
  };
}
