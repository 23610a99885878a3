// Explains a keyword: where it may stand, what may stand behind it, and an example.
import type { Form } from "../../../grammar/directive.ts";
import { FORMS, keywords } from "../../../grammar/directives/index.ts";
import { FILE_KEYWORDS, type FileLine, findFileLine } from "../../../grammar/file-lines.ts";
import { signature, slotSignature, slotWords } from "../../../grammar/signature.ts";
import { indented, type Topic } from "./topic.ts";

export const keywordTopic: Topic = {
  title: "keywords",
  words: [...FILE_KEYWORDS, ...keywords],
  explain: (word) => {
    const keyword = word.toLowerCase();
    const forms = FORMS.filter((form) => form.keyword === keyword);
    const line = findFileLine(keyword);
    if (forms.length > 0) return forms.map(explanation).join("\n");
    return line && paragraphs(line, [indented(line.signature), line.doc]);
  },
};

function explanation(form: Form): string {
  const slots = Object.entries(form.slots).map(
    ([name, slot]) => `${slotSignature(name, slot)}: ${slotWords(slot.type)}`,
  );
  return paragraphs({ ...form, place: placeOf(form) }, [
    indented(signature(form)),
    form.doc,
    slots.join("\n"),
  ]);
}

function paragraphs(
  { keyword, place, example }: Pick<FileLine, "keyword" | "place" | "example">,
  middle: readonly string[],
): string {
  return [`${keyword} (${place})`, ...middle, `Example: ${example}\n`].join("\n\n");
}

function placeOf(form: Form): string {
  if (form.form === "heading") return "opens a block";
  return `a line of ${form.within.join(", ")}${form.repeatable ? "; may be repeated" : ""}`;
}
