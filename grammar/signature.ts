// Prints a directive's form the way help texts and the reference show it: `seat ANGLE [width LENGTH]`.
import type { Form } from "./directive.ts";
import type { Slot, SlotType } from "./slots.ts";

/** The form of a directive in one line; capitals stand for values, brackets for what may be left out. */
export function signature(form: Form): string {
  const slots = Object.entries(form.slots).map(([name, slot]) => slotSignature(name, slot));
  return [form.keyword, ...slots].join(" ");
}

/** One slot of the form: `DIAMETER`, `[at PRESSURE]`, `draws|blows`. */
export function slotSignature(name: string, slot: Slot): string {
  const value = typeSignature(name, slot.type);
  const said = slot.word === undefined ? value : `${slot.word} ${value}`;
  return slot.optional ? `[${said}]` : said;
}

/** What a slot takes, in words: `a length`, `a name of a bench`, `one of draws, blows`. */
export function slotWords(type: SlotType): string {
  switch (type.kind) {
    case "name":
      return "a name";
    case "label":
      return "a word";
    case "reference":
      return `the name of ${withArticle(type.to)}`;
    case "quantity":
      return `${withArticle(type.dimension.replace("-", " "))} with its unit${type.or === undefined ? "" : ` or '${type.or}'`}`;
    case "number":
      return type.whole ? "a whole number" : "a number";
    case "text":
      return "a text in quotes";
    case "date":
      return "a date";
    case "choice":
      return `one of ${type.of.join(", ")}`;
    case "air":
      return "a reference air, or its temperature and pressure";
    case "channel":
      return "a column name in quotes and its unit";
  }
}

function withArticle(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;
}

function typeSignature(name: string, type: SlotType): string {
  switch (type.kind) {
    case "name":
    case "reference":
      return "ID";
    case "label":
      return "NAME";
    case "quantity":
      return type.or === undefined
        ? type.dimension.toUpperCase()
        : `${type.dimension.toUpperCase()}|${type.or}`;
    case "number":
      return type.whole ? "N" : "NUMBER";
    case "text":
      return `"${name}"`;
    case "date":
      return "DATE";
    case "choice":
      return type.of.join("|");
    case "air":
      return "AIR";
    case "channel":
      return '"column" UNIT';
  }
}
