// What may stand between quotes: texts that other blocks state in the same place.
import type { Form } from "../../grammar/directive.ts";
import type { Scope } from "../analysis/scope.ts";
import type { Offer } from "./offer.ts";
import type { OpenLine } from "./open-line.ts";
import { slotsAfter } from "./slot-at.ts";
import { seenOffers } from "./usual-offers.ts";

/** For a line of a form that is written up to an opening quote. */
export function textOffers(scope: Scope, form: Form, { line, before }: OpenLine): readonly Offer[] {
  const texts = slotsAfter(form, before).slots.filter(({ slot }) => slot.type.kind === "text");
  return texts.flatMap(({ name }) => seenOffers(scope, form, name, line).map(unquoted));
}

/** The offer of a text for a place between quotes. */
export function unquoted(offer: Offer): Offer {
  const insert = offer.insert.slice(1, -1);
  return { ...offer, label: insert.replace(/\\(.)/g, "$1"), insert };
}
