// Random lines and files made from the lists of the format itself, so that what is new is tested the day it is added.
import fc from "fast-check";
import { bind } from "../../grammar/bind.ts";
import { COLUMNS, type ColumnKind, columnsWithin } from "../../grammar/columns.ts";
import type { Form, Heading } from "../../grammar/directive.ts";
import { FORMS, findProperty, propertyKeywords } from "../../grammar/directives/index.ts";
import { parseLine } from "../../grammar/line-parser.ts";
import type { Slot, SlotType } from "../../grammar/slots.ts";
import type { Dimension } from "../../shared/quantity/dimension.ts";
import { unitsOf } from "../../shared/quantity/unit.ts";

export const HEADINGS: readonly Heading[] = FORMS.filter((form) => form.form === "heading");

const digits = (minLength: number, maxLength: number) =>
  fc.string({ unit: fc.constantFrom(..."0123456789"), minLength, maxLength });

export const numberWord: fc.Arbitrary<string> = fc.oneof(
  { weight: 6, arbitrary: fc.tuple(digits(1, 3), digits(1, 4)).map(([whole, part]) => `${whole}.${part}`) },
  { weight: 2, arbitrary: digits(1, 4) },
  { weight: 1, arbitrary: digits(1, 3).map((part) => `-.${part}`) },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.integer({ min: 1, max: 31 }), fc.constantFrom(2, 8, 32)).map((f) => f.join("/")),
  },
);

export const idWord: fc.Arbitrary<string> = fc.stringMatching(/^[A-Za-z][A-Za-z0-9._-]{0,8}$/);

export const textWord: fc.Arbitrary<string> = fc
  .string({ unit: fc.constantFrom(..."ab 09.#[]'\\\"-", "void", "°", "\u{1F527}"), maxLength: 12 })
  .map((text) => `"${text.replace(/["\\]/g, "\\$&")}"`);

const dateWord: fc.Arbitrary<string> = fc
  .tuple(
    fc.integer({ min: 1990, max: 2100 }),
    fc.integer({ min: 10, max: 12 }),
    fc.integer({ min: 10, max: 30 }),
  )
  .chain(([year, month, day]) =>
    fc.constantFrom("", "T09:30+01:00", "T23:59:59Z").map((t) => `${year}-${month}-${day}${t}`),
  );

function inAnyOrder<T>(items: readonly T[]): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...items], { minLength: items.length });
}

function someOf<T>(items: readonly T[], least: number, most: number): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...items], { minLength: least, maxLength: Math.min(most, items.length) });
}

function unitWord(dimension: Dimension): fc.Arbitrary<string> {
  return fc.constantFrom(...unitsOf(dimension).map(({ symbol }) => symbol));
}

function quantityWords(dimension: Dimension): fc.Arbitrary<string[]> {
  return fc.tuple(numberWord, unitWord(dimension));
}

/** The words of one value. */
export function valueWords(type: SlotType): fc.Arbitrary<string[]> {
  const one = (word: fc.Arbitrary<string>) => word.map((text) => [text]);
  switch (type.kind) {
    case "name":
    case "reference":
    case "label":
      return one(idWord);
    case "quantity":
      return type.or === undefined
        ? quantityWords(type.dimension)
        : fc.oneof(quantityWords(type.dimension), fc.constant<string[]>([type.or]));
    case "number":
      return one(type.whole ? fc.integer({ min: 1, max: 64 }).map(String) : numberWord);
    case "text":
      return one(textWord);
    case "date":
      return one(dateWord);
    case "choice":
      return one(fc.constantFrom(...type.of));
    case "air":
      return fc.oneof(
        one(idWord),
        fc.tuple(quantityWords("temperature"), quantityWords("pressure")).map((words) => words.flat()),
      );
    case "channel":
      return fc.tuple(textWord, unitWord(type.dimension));
  }
}

function slotWords(slot: Slot): fc.Arbitrary<string[]> {
  const { word } = slot;
  const words = valueWords(slot.type).map((value) => (word === undefined ? value : [word, ...value]));
  return slot.optional ? fc.oneof(words, fc.constant<string[]>([])) : words;
}

/** The words of a valid line of a form: its positional values in their order, then its named ones in any. */
export function lineWords(form: Form): fc.Arbitrary<string[]> {
  const slots = Object.values(form.slots);
  const positional = fc.tuple(...slots.filter(({ word }) => word === undefined).map(slotWords));
  const named = fc
    .tuple(...slots.filter(({ word }) => word !== undefined).map(slotWords))
    .chain((parts) => inAnyOrder(parts));
  return fc
    .tuple(positional, named)
    .map((parts) => [form.keyword, ...parts.flat(2)])
    .filter((words) => reads(form, words.join(" ")));
}

/** Values may be right one by one and still not go together; and a name may happen to be a word of the line. */
function reads(form: Form, text: string): boolean {
  const line = parseLine(text);
  return line.kind === "directive" && line.findings.length === 0 && bind(form, line).findings.length === 0;
}

function headWord({ name, dimensions }: ColumnKind): fc.Arbitrary<string> {
  const units = dimensions.flatMap((dimension) => unitsOf(dimension).map(({ symbol }) => symbol));
  return units.length === 0 ? fc.constant(name) : fc.constantFrom(...units).map((unit) => `${name}[${unit}]`);
}

function cellWord({ dimensions }: ColumnKind): fc.Arbitrary<string> {
  return dimensions.length === 0
    ? fc.constantFrom("low", "high", "300cfm", "2")
    : fc.oneof({ weight: 5, arbitrary: numberWord }, fc.constant("-"));
}

const ending: fc.Arbitrary<string[]> = fc.oneof(
  { weight: 5, arbitrary: fc.constant<string[]>([]) },
  textWord.map((remark) => [remark]),
  textWord.map((why) => ["void", why]),
  fc.tuple(textWord, textWord).map(([remark, why]) => [remark, "void", why]),
);

function tableWords({ block, columns }: Heading): fc.Arbitrary<string[][]> {
  if (columns === undefined) return fc.constant([]);
  const others = columnsWithin(block).filter(({ name }) => !columns.includes(name));
  const needed = COLUMNS.filter(({ name }) => columns.includes(name));
  return someOf(others, 0, 3).chain((some) => {
    const kinds = [...needed, ...some];
    // A table that the block can do without needs a bracket, or two columns, to be told from a line of another kind.
    if (kinds.every(({ dimensions }) => dimensions.length === 0)) return fc.constant([]);
    const head = fc.tuple(...kinds.map(headWord));
    const row = fc.tuple(fc.tuple(...kinds.map(cellWord)), ending).map((parts) => parts.flat());
    return fc.tuple(head, fc.array(row, { maxLength: 4 })).map(([first, rows]) => [first, ...rows]);
  });
}

/** The lines of a valid block, each as its words; the first opens it. */
export function blockLines(heading: Heading): fc.Arbitrary<string[][]> {
  const optional = propertyKeywords(heading.block).filter((keyword) => !heading.required.includes(keyword));
  // A block of an ambiguous keyword needs a line of its own to be told from a property.
  const least = heading.required.length === 0 && heading.keyword === "engine" ? 1 : 0;
  return someOf(optional, least, 5)
    .chain((some) => inAnyOrder([...heading.required, ...some]))
    .chain((keywords) => {
      const lines = keywords.flatMap((keyword) => findProperty(heading.block, keyword) ?? []).map(lineWords);
      return fc.tuple(lineWords(heading), fc.tuple(...lines), tableWords(heading));
    })
    .map(([first, properties, table]) => [first, ...properties, ...table]);
}

/** The blocks of a valid file without its version line, canonically spaced but for alignment. */
export const fileBlocks: fc.Arbitrary<string[][]> = fc.array(
  fc
    .constantFrom(...HEADINGS)
    .chain(blockLines)
    .map((lines) => lines.map((words) => words.join(" "))),
  { maxLength: 4 },
);

const blanks = fc.constantFrom(" ", " ", "  ", "\t", "      ", "\u00A0");
const margins = fc.constantFrom("", "", "  ", " ", "\t", "        ");
const endings = fc.constantFrom("", "", "", "  ", "  # a comment", "\t#allow", ' # 2.020" \u2028 after ');
const between = fc.constantFrom(
  [],
  [],
  [""],
  ["   "],
  ["# at the margin"],
  ["   # indented  "],
  ["x-shop  red [ 1 "],
);

/** A valid file with blanks, comments and line ends as careless as they can be. */
export const carelessFile: fc.Arbitrary<string> = fc
  .array(fc.constantFrom(...HEADINGS).chain(blockLines), { maxLength: 4 })
  .chain((blocks) => fc.tuple(...[["headnote", "1"], ...blocks.flat()].map(carelessLine)))
  .chain((lines) =>
    fc.tuple(fc.constant(lines.flat()), fc.constantFrom("\n", "\r\n", "\r"), fc.boolean(), fc.boolean()),
  )
  .map(([lines, end, bom, ended]) => `${bom ? "\uFEFF" : ""}${lines.join(end)}${ended ? end : ""}`);

function carelessLine(words: readonly string[]): fc.Arbitrary<string[]> {
  const gaps = fc.array(blanks, { minLength: words.length, maxLength: words.length });
  return fc.tuple(margins, gaps, endings, between).map(([margin, gap, end, after]) => {
    const text = words.map((word, index) => (index === 0 ? word : (gap[index] ?? " ") + word)).join("");
    return [margin + text + end, ...after];
  });
}

const FRAGMENTS: readonly string[] = [
  ...[
    "\n",
    "\r",
    "\r\n",
    " ",
    "  ",
    "\t",
    "#",
    '"',
    "\\",
    "[",
    "]",
    "-",
    "void",
    "\0",
    "\uFEFF",
    "\u2028",
    "\uD83D",
  ],
  ...[
    "headnote 1\n",
    'include "a.headnote"',
    "0.300",
    "28.0",
    "2,5",
    '2.020"',
    '28"H2O',
    "in",
    "cfm",
    "°F",
    "isa",
    "at",
    "of",
  ],
  ...[
    "lift[in]",
    "depression[inH2O]  flow[cfm]\n",
    "range",
    "run r1\n",
    "bench b\n",
    "<<<<<<< mine\n",
    "=======\n",
    "x-y",
  ],
  ...FORMS.map(({ keyword }) => keyword),
  ...COLUMNS.map(({ example }) => example[0]),
];

/** Text that looks like the format and seldom is. */
export const brokenText: fc.Arbitrary<string> = fc
  .array(fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...FRAGMENTS) }, anyUnits(3), fc.constant(" ")), {
    maxLength: 60,
  })
  .map((parts) => parts.join(""));

/** Any string of UTF-16 units, lone surrogates and control characters among them. */
export function anyUnits(maxLength: number): fc.Arbitrary<string> {
  return fc
    .array(fc.integer({ min: 0, max: 0xffff }), { maxLength })
    .map((units) => String.fromCharCode(...units));
}
