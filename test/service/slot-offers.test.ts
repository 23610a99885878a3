import { describe, expect, test } from "vitest";
import { bind } from "../../grammar/bind.ts";
import type { Form } from "../../grammar/directive.ts";
import { FORMS, findHeading } from "../../grammar/directives/index.ts";
import { parseLine } from "../../grammar/line-parser.ts";
import { labelsAt, offersAt } from "../kit/offers.ts";

/** Something of every kind that a line can name. */
const SHOP = `headnote 1
bench north
  shows flow
plate p2500
  diameter 2.5 in
engine road
  bore 4.030 in
head a114
  engine road
port intake
  valve 2.020 in
cam mild
  side intake
run before
  stage "as cast"
session 2026-03-02
  bench north
`;

/** What nobody but the user can know: numbers, texts and names that are new. */
const FREE = ["name", "label", "number", "text", "date"];

/** The words of a form's example, each with the text of its line in front of it, that completion should know. */
function knownWords(form: Form): readonly (readonly [before: string, word: string])[] {
  const line = parseLine(form.example);
  if (line.kind !== "directive") throw new Error(`${form.example} is no directive`);
  const places = Object.entries(bind(form, line).places);
  return line.atoms.flatMap((atom): [string, string][] => {
    const slot = places.find(([, { from, to }]) => atom.from >= from && atom.to <= to)?.[0];
    const kind = slot === undefined ? "word" : (form.slots[slot]?.type.kind ?? "word");
    const isFree =
      FREE.includes(kind) || kind === "reference" || /^[\d"]/.test(form.example.slice(atom.from));
    return isFree ? [] : [[form.example.slice(0, atom.from), atom.text]];
  });
}

/** A file that ends in the form's example, broken off, in a block that may hold it. */
function brokenOff(block: string, before: string): string {
  const heading = block === "" || block === "session" ? "" : `${findHeading(block)?.example}\n`;
  return `${SHOP}${heading}${block === "" ? "" : "  "}${before}$0\n`;
}

const places = FORMS.flatMap((form) =>
  (form.form === "heading" ? [""] : form.within).map((block) => [form.keyword, block, form] as const),
);

describe("every word of every directive's example is offered in its place", () => {
  test.each(places)("%s of a block %s", (_, block, form) => {
    for (const [before, word] of knownWords(form)) {
      expect(labelsAt(brokenOff(block, before)), before).toContain(word);
    }
  });
});

describe("every name that a directive takes is offered in its place", () => {
  const takers = places.filter(([, , { layout }]) => layout.references.length > 0);
  test.each(takers)("%s of a block %s", (_, block, form) => {
    const line = parseLine(form.example);
    if (line.kind !== "directive") throw new Error(`${form.example} is no directive`);
    for (const { name, to } of form.layout.references) {
      const at = bind(form, line).places[name]?.from ?? 0;
      const found = offersAt(brokenOff(block, form.example.slice(0, at)));
      expect(found.every(({ kind }) => kind === "name") && found.length > 0, to).toBe(true);
    }
  });
});
