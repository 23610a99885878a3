// Explains a keyword: where it may stand, what may stand behind it, and an example.
import type { Form } from "../../../grammar/directive.ts";
import { FORMS, keywords } from "../../../grammar/directives/index.ts";
import { signature, slotSignature, slotWords } from "../../../grammar/signature.ts";
import { indented, type Topic } from "./topic.ts";

/** The two lines of a file that open no block and belong to none. */
const FILE_LINES: Readonly<Record<string, string>> = {
  headnote: `headnote (a file's first line)\n\n    headnote 1\n\nSays that the file is a record, and in which version of the format.\n`,
  include: `include (a line of the file)\n\n    include "path"\n\nTakes in what another file defines; the path counts from this file's own folder, with /.\n\nExample: include "../shop.headnote"\n`,
};

export const keywordTopic: Topic = {
  title: "keywords",
  words: [...Object.keys(FILE_LINES), ...keywords],
  explain: (word) => {
    const keyword = word.toLowerCase();
    const forms = FORMS.filter((form) => form.keyword === keyword);
    const known = forms.length === 0 ? undefined : forms.map(explanation).join("\n");
    return known ?? (Object.hasOwn(FILE_LINES, keyword) ? FILE_LINES[keyword] : undefined);
  },
};

function explanation(form: Form): string {
  const slots = Object.entries(form.slots).map(
    ([name, slot]) => `${slotSignature(name, slot)}: ${slotWords(slot.type)}`,
  );
  return [
    `${form.keyword} (${placeOf(form)})`,
    indented(signature(form)),
    form.doc,
    slots.join("\n"),
    `Example: ${form.example}\n`,
  ].join("\n\n");
}

function placeOf(form: Form): string {
  if (form.form === "heading") return "opens a block";
  return `a line of ${form.within.join(", ")}${form.repeatable ? "; may be repeated" : ""}`;
}
