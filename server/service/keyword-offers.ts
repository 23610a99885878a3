// The words that a line may begin with: what its block takes and has not, and what opens another block.
import type { Form } from "../../grammar/directive.ts";
import {
  findHeading,
  findProperty,
  headingKeywords,
  propertyKeywords,
} from "../../grammar/directives/index.ts";
import type { Outline, PlacedBlock } from "../../grammar/outline.ts";
import { signature } from "../../grammar/signature.ts";
import { code } from "./markdown.ts";
import type { Offer } from "./offer.ts";

/** Properties of the open block: the required ones first, then those not stated, then those that may stand again. */
export function propertyOffers(placed: PlacedBlock | undefined): readonly Offer[] {
  if (placed === undefined) return [];
  const { heading, entity } = placed.block;
  const stated = entity.origin.lines;
  const rank = (keyword: string) => (stated.has(keyword) ? 2 : heading.required.includes(keyword) ? 0 : 1);
  return propertyKeywords(heading.block)
    .map((keyword) => ({ keyword, form: findProperty(heading.block, keyword) }))
    .filter(({ keyword, form }) => !stated.has(keyword) || form?.repeatable === true)
    .sort((a, b) => rank(a.keyword) - rank(b.keyword))
    .flatMap(({ form }) => (form === undefined ? [] : [keywordOffer(form)]));
}

export function headingOffers(): readonly Offer[] {
  return headingKeywords.flatMap((keyword) => {
    const form = findHeading(keyword);
    return form === undefined ? [] : [keywordOffer(form)];
  });
}

/** The version line, where nothing stands above it. */
export function versionOffers({ lines }: Outline, line: number): readonly Offer[] {
  const first = lines.findIndex(({ kind }) => kind !== "blank");
  if (first >= 0 && first < line) return [];
  return [{ label: "headnote", insert: "headnote 1", kind: "keyword", detail: "version of the format" }];
}

export const includeOffer: Offer = {
  label: "include",
  insert: "include ",
  snippet: 'include "$1"',
  kind: "keyword",
  detail: 'include "path"',
};

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
