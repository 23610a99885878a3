// Makes the format's grammar in the notation of the W3C's XML recommendation, so that a second reader can be written.
import { COLUMNS, type ColumnKind, columnsWithin } from "../../grammar/columns.ts";
import type { Form, Heading, Property } from "../../grammar/directive.ts";
import { FORMS } from "../../grammar/directives/index.ts";
import type { Slot, SlotType } from "../../grammar/slots.ts";
import { FORMAT_VERSION } from "../../grammar/version-line.ts";
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import type { Dimension } from "../../shared/quantity/dimension.ts";
import { unitsOf } from "../../shared/quantity/unit.ts";

const FOREWORD = `/*
The Headnote format, version ${FORMAT_VERSION}, in the notation of Extensible Markup Language (XML) 1.0, section 6.

What the notation cannot say:
- A line is read alone. Indentation has no meaning.
- 'Gap' is one or more blanks. It may be left out between a number and its unit.
- Values that stand behind a word of their own ('at', 'within') may come in any order, each once at most.
- Each value of an 'air' line stands in it once at most.
- A line of a block stands in it once at most, unless it is marked as repeatable. A block has one table at most.
- 'bench', 'port', 'engine' and 'cam' open a block, and are also lines of one. Inside a block that takes such a line it
  opens a block if it has a title, or if the first line below it that only one of the two can hold belongs to the block
  that it would open.
- A row has one cell for each column of its table. A cell of a column without a unit is a word.
- The last line of a file may lack its line end.
- Units are given here in their canonical spelling. REFERENCE.md lists the other spellings that are read.
*/
`;

const LINES: readonly (readonly [symbol: string, form: string])[] = [
  ["record", "BlankLine* VersionLine Aside* block*"],
  ["VersionLine", `Margin 'headnote' Gap '${FORMAT_VERSION}' End`],
  ["IncludeLine", "Margin 'include' Gap Text End"],
  ["OwnLine", "Margin 'x-' WordCharacter* RestOfLine LineEnd"],
  ["BlankLine", "Margin Comment? LineEnd"],
  ["Aside", "BlankLine | IncludeLine | OwnLine"],
  ["Row", "Margin Cell ( Gap Cell )* ( Gap Text )? ( Gap 'void' ( Gap Text )? )? End"],
  ["Cell", "Number | '-' | Word"],
];

const TERMINALS: readonly (readonly [symbol: string, form: string])[] = [
  ["Number", "'-'? ( Digit+ ( '.' Digit+ )? | '.' Digit+ | ( Digit+ '-' )? Digit+ '/' Digit+ )"],
  ["WholeNumber", "Digit+"],
  ["Digit", "[0-9]"],
  ["Text", `'"' ( [^"\\#xA#xD] | '\\"' | '\\\\' )* '"'`],
  ["Id", "[A-Za-z0-9] [A-Za-z0-9._-]*"],
  ["Word", "( WordCharacter - '#' ) WordCharacter*"],
  ["WordCharacter", `[^#x0-#x20"#x5B#x5D#x7F-#xA0]`],
  ["Date", "Day ( 'T' Digit Digit ':' Digit Digit ( ':' Digit Digit )? ( 'Z' | Offset )? )?"],
  ["Day", "Digit Digit Digit Digit '-' Digit Digit '-' Digit Digit"],
  ["Offset", "[+#x2D] Digit Digit ':' Digit Digit"],
  ["Margin", "Gap?"],
  ["Gap", "[#x20#x9]+"],
  ["Comment", "'#' RestOfLine"],
  ["RestOfLine", "[^#xA#xD]*"],
  ["End", "( Gap Comment? )? LineEnd"],
  ["LineEnd", "#xD#xA | #xA | #xD"],
];

/** The grammar, ending in a line end. */
export function ebnf(): string {
  const headings = FORMS.filter((form): form is Heading => form.form === "heading");
  const properties = FORMS.filter((form): form is Property => form.form === "property");
  const sections: (readonly [title: string, rules: readonly (readonly [string, string])[]])[] = [
    ["Lines of a file", [...LINES, ["block", alternatives(headings.map(({ block }) => `${block}-block`))]]],
    ["Blocks", headings.flatMap((heading) => blockRules(heading, properties))],
    ["Lines of a block", properties.map((form) => [`${form.keyword}-line`, propertyForm(form)])],
    ["Columns", COLUMNS.map((column) => [columnSymbol(column), columnForm(column)])],
    ["Values", valueRules()],
    ["Characters", TERMINALS],
  ];
  const text = sections.map(([title, rules]) => `/* ${title} */\n\n${rules.map(printed).join("\n")}\n`);
  return [FOREWORD, ...text].join("\n");
}

function printed([symbol, form]: readonly [string, string]): string {
  return `${symbol.padEnd(20)} ::= ${form}`;
}

function alternatives(symbols: readonly string[]): string {
  return symbols.join(" | ");
}

function grouped(symbols: readonly string[]): string {
  return symbols.length === 1 ? alternatives(symbols) : `( ${alternatives(symbols)} )`;
}

function blockRules({ block, ...heading }: Heading, properties: readonly Property[]): [string, string][] {
  const lines = properties.filter(({ within }) => within.includes(block));
  const table = heading.columns === undefined ? [] : [`${block}-table`];
  const parts = [...lines.map(({ keyword }) => `${keyword}-line`), ...table, "Aside"];
  const rules: [string, string][] = [
    [`${block}-block`, `${block}-heading ( ${alternatives(parts)} )*`],
    [`${block}-heading`, lineOf(heading)],
  ];
  if (table.length === 0) return rules;
  const columns = alternatives(columnsWithin(block).map(columnSymbol));
  return [
    ...rules,
    [`${block}-table`, `${block}-columns ( Row | Aside )*`],
    [`${block}-columns`, `Margin ${block}-column ( Gap ${block}-column )* End`],
    [`${block}-column`, columns],
  ];
}

function lineOf({ keyword, slots, anyOrder }: Pick<Form, "keyword" | "slots" | "anyOrder">): string {
  const values = Object.values(slots);
  const positional = values.filter(({ word }) => word === undefined);
  const named = values.filter(({ word }) => word !== undefined);
  const stated = anyOrder
    ? [`( Gap ${grouped(values.map(statedForm))} )+`]
    : [...positional, ...named].map(slotForm);
  return ["Margin", `'${keyword}'`, ...stated, "End"].join(" ");
}

function propertyForm(form: Property): string {
  return form.repeatable ? `${lineOf(form)} /* repeatable */` : lineOf(form);
}

function slotForm(slot: Slot): string {
  const stated = `Gap ${statedForm(slot)}`;
  return slot.optional ? `( ${stated} )?` : stated;
}

function statedForm({ type, word }: Slot): string {
  return word === undefined ? valueForm(type) : `'${word}' Gap ${valueForm(type)}`;
}

function valueForm(type: SlotType): string {
  switch (type.kind) {
    case "name":
    case "reference":
      return "Id";
    case "label":
      return "Word";
    case "quantity":
      return type.or === undefined
        ? dimensionSymbol(type.dimension)
        : `( ${dimensionSymbol(type.dimension)} | '${type.or}' )`;
    case "number":
      return type.whole ? "WholeNumber" : "Number";
    case "text":
      return "Text";
    case "date":
      return "Date";
    case "choice":
      return grouped(type.of.map((word) => `'${word}'`));
    case "air":
      return "Air";
    case "channel":
      return `Text Gap ${unitSymbol(type.dimension)}`;
  }
}

function columnSymbol({ name }: ColumnKind): string {
  return `${name}-column`;
}

function columnForm({ name, dimensions }: ColumnKind): string {
  if (dimensions.length === 0) return `'${name}'`;
  return `'${name}' Gap? #x5B Gap? ${grouped(dimensions.map(unitSymbol))} Gap? #x5D`;
}

function valueRules(): [string, string][] {
  const slotTypes = FORMS.flatMap(({ slots }) => Object.values(slots).map(({ type }) => type));
  const stated = slotTypes.flatMap((type) => (type.kind === "quantity" ? [type.dimension] : []));
  const measured = COLUMNS.flatMap((column) => column.dimensions);
  const quantities = [...new Set<Dimension>([...stated, "temperature", "pressure", "humidity"])];
  const units = [...new Set<Dimension>([...quantities, ...measured])];
  const airs = alternatives(referenceAirs.map(({ name }) => `'${name}'`));
  return [
    ...quantities.map((dimension): [string, string] => [
      dimensionSymbol(dimension),
      `Number Gap? ${unitSymbol(dimension)}`,
    ]),
    ["Air", `${airs} | Temperature Gap Pressure ( Gap Humidity )?`],
    ...units.map((dimension): [string, string] => [
      unitSymbol(dimension),
      alternatives(unitsOf(dimension).map(({ symbol }) => `'${symbol}'`)),
    ]),
  ];
}

function dimensionSymbol(dimension: Dimension): string {
  return dimension.replace(/(?:^|-)([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

function unitSymbol(dimension: Dimension): string {
  return `${dimensionSymbol(dimension)}Unit`;
}
