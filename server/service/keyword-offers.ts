// The words that a line may begin with: what its block takes and has not, and what opens another block.
import type { Form } from "../../grammar/directive.ts";
import {
  findHeading,
  findProperty,
  headingKeywords,
  propertyKeywords,
} from "../../grammar/directives/index.ts";
import type { Outline, PlacedBlock } from "../../grammar/outline.ts";
import { FILE_KEYWORDS } from "../../grammar/read-part.ts";
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

/** `include`, and the version line where the file has none. */
export function fileOffers({ lines }: Outline): readonly Offer[] {
  const first = lines.find(({ kind }) => kind !== "blank");
  const isVersioned = first?.kind === "directive" && first.keyword.text === "headnote";
  return FILE_KEYWORDS.filter((keyword) => keyword !== "headnote" || !isVersioned).map((keyword): Offer => {
    const rest = { label: keyword, kind: "keyword" } as const;
    return keyword === "headnote"
      ? { ...rest, insert: "headnote 1", detail: "version of the format" }
      : { ...rest, insert: `${keyword} `, snippet: `${keyword} "$1"`, detail: `${keyword} "path"` };
  });
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
