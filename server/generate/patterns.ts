// Regular expressions over the format's own lists, as text, for editors that colour lines without reading them.
import { COLUMNS } from "../../grammar/columns.ts";
import { FORMS, headingKeywords } from "../../grammar/directives/index.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import { UNITS } from "../../shared/quantity/units.ts";

/** Any of the words, the longest first, so that none hides a longer one that begins like it. */
export function anyOf(words: readonly string[]): string {
  const longestFirst = [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return longestFirst.map((word) => word.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&")).join("|");
}

/** Keywords that open a block, whatever else they may do. */
export const HEADINGS = anyOf(headingKeywords);

const propertyWords = new Set(FORMS.flatMap(({ form, keyword }) => (form === "property" ? [keyword] : [])));

/** Keywords that open a block and never stand in one. */
export const HEADINGS_ONLY = anyOf(headingKeywords.filter((keyword) => !propertyWords.has(keyword)));

export const PROPERTIES = anyOf([...propertyWords]);

export const KEYWORDS = anyOf(FORMS.map(({ keyword }) => keyword));

export const COLUMN_NAMES = anyOf(COLUMNS.map(({ name }) => name));

const slots = FORMS.flatMap((form) => Object.values(form.slots));

/** Words that stand before a value: `at`, `of`, `width`. */
export const SLOT_WORDS = anyOf(slots.flatMap(({ word }) => (word === undefined ? [] : [word])));

/** Words that are a value by themselves: `intake`, `none`. */
export const CHOICES = anyOf(
  slots.flatMap(({ type }) => {
    if (type.kind === "choice") return type.of;
    return type.kind === "quantity" && type.or !== undefined ? [type.or] : [];
  }),
);

export const AIRS = anyOf(referenceAirs.map(({ name }) => name));

/** Units in their canonical spelling; `1` is left out, since it cannot be told from a number. */
export const UNIT_SYMBOLS = anyOf(UNITS.map(({ symbol }) => symbol).filter((symbol) => symbol !== "1"));
