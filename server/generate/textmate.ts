// Makes the TextMate grammar: colours for every editor that has no language server, from the format's own lists.
import {
  AIRS,
  CHOICES,
  COLUMN_NAMES,
  HEADINGS,
  HEADINGS_ONLY,
  KEYWORDS,
  PROPERTIES,
  SLOT_WORDS,
  UNIT_SYMBOLS,
} from "./patterns.ts";

interface Pattern {
  readonly include?: string;
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly patterns?: readonly Pattern[];
}

type Captures = Readonly<Record<string, { readonly name?: string; readonly patterns?: readonly Pattern[] }>>;

const END = "(?!\\S)";
const START = "(?<!\\S)";
const NUMBER = "-?(?:(?:\\d+-)?\\d+/\\d+|\\d+\\.\\d+|\\.\\d+|\\d+)";
const ROW_START = "[-+]?[.,]?\\p{Nd}";
const HEAD_WORD = '[^\\s"\\[\\]#0-9][^\\s"\\[\\]]*';

const include = (...names: string[]): Pattern[] => names.map((name) => ({ include: `#${name}` }));

/** A line from its first words to its end. */
function line(name: string, begin: string, beginCaptures: Captures, patterns: readonly Pattern[]): Pattern {
  return { name: `meta.${name}.headnote`, begin, end: "$", beginCaptures, patterns };
}

const repository: Readonly<Record<string, Pattern>> = {
  conflict: {
    name: "invalid.illegal.conflict-marker.headnote",
    match: "^(?:<{7}|={7}|>{7}|\\|{7})(?: .*)?$",
  },
  comment: {
    name: "comment.line.number-sign.headnote",
    match: `${START}(#)(?:\\s*(allow)\\s+([A-Za-z0-9-]+)(?=\\s*(?::|$)))?.*$`,
    captures: {
      1: { name: "punctuation.definition.comment.headnote" },
      2: { name: "keyword.control.allow.headnote" },
      3: { name: "entity.name.tag.code.headnote" },
    },
  },
  version: line(
    "version",
    `^\\s*(headnote)(?:\\s+(\\d+))?${END}`,
    { 1: { name: "keyword.control.version.headnote" }, 2: { name: "constant.numeric.version.headnote" } },
    include("comment", "text"),
  ),
  includeLine: line(
    "include",
    `^\\s*(include)${END}`,
    { 1: { name: "keyword.control.include.headnote" } },
    include("comment", "text"),
  ),
  ownLine: line(
    "own",
    "^\\s*(x-\\S*)",
    { 1: { name: "keyword.other.own.headnote" } },
    include("comment", "text"),
  ),
  // A line that names a title or an id behind its keyword; the date of a session and the lift of a trace are values.
  heading: line(
    "heading",
    `^(?:\\s*(${HEADINGS_ONLY})|(${HEADINGS}))${END}(?:\\s+(?!\\d{4}-\\d\\d-\\d\\d)([A-Za-z0-9][A-Za-z0-9._-]*)${END}(?!\\s+(?:${UNIT_SYMBOLS})${END})(?<!\\sof))?`,
    {
      1: { name: "keyword.control.heading.headnote" },
      2: { name: "keyword.control.heading.headnote" },
      3: { name: "entity.name.type.headnote" },
    },
    include("comment", "values"),
  ),
  property: line(
    "property",
    `^\\s*(${PROPERTIES})${END}`,
    { 1: { name: "keyword.other.property.headnote" } },
    include("comment", "values"),
  ),
  // A known name or a word that is no keyword, then other words, then a bracket; or two names of columns and nothing else.
  columns: line(
    "columns",
    `^(?=\\s*(?:(?:(?:${COLUMN_NAMES})(?=[\\s\\[])|(?!(?:${KEYWORDS}|headnote|include)[\\s\\[])(?!x-)${HEAD_WORD})(?:\\s+${HEAD_WORD})*\\s*\\[|(?:${COLUMN_NAMES})(?:\\s+(?:${COLUMN_NAMES}))+\\s*(?:$|\\s#)))`,
    {},
    include("comment", "head", "text"),
  ),
  head: {
    match: `(?:(?<=[\\s\\]])|^)(?:(${COLUMN_NAMES})(?=[\\s\\[]|$)|${HEAD_WORD})(?:\\s*(\\[)\\s*(?:(${UNIT_SYMBOLS})(?=[\\s\\]]|$)|[^\\s\\[\\]]*)\\s*(\\])?)?`,
    captures: {
      1: { name: "entity.name.tag.column.headnote" },
      2: { name: "punctuation.definition.unit.begin.headnote" },
      3: { name: "keyword.other.unit.headnote" },
      4: { name: "punctuation.definition.unit.end.headnote" },
    },
  },
  row: line(
    "row",
    `^(?=\\s*(?:-${END}|${ROW_START}))`,
    {},
    include("comment", "text", "void", "missing", "number", "badNumber"),
  ),
  void: { name: "keyword.control.void.headnote", match: `${START}void${END}` },
  missing: { name: "constant.language.missing.headnote", match: `${START}-${END}` },
  values: {
    patterns: include("text", "date", "number", "badNumber", "choice", "slotWord", "air", "word"),
  },
  date: {
    name: "constant.other.date.headnote",
    match: `${START}\\d{4}-\\d{2}-\\d{2}(?:T\\d{2}:\\d{2}(?::\\d{2})?(?:Z|[+-]\\d{2}:\\d{2}))?${END}`,
  },
  number: {
    match: `${START}(${NUMBER})(?:\\s*(${UNIT_SYMBOLS}|(?<=\\d)"(?:[Hh]2[Oo]|[Ww][CcGg])?))?${END}`,
    captures: {
      1: { name: "constant.numeric.headnote" },
      2: { name: "keyword.other.unit.headnote" },
    },
  },
  badNumber: {
    name: "invalid.illegal.number.headnote",
    match: `${START}(?:[-+]?[.,]?\\p{Nd}[\\p{Nd}.,]*(?:[eE][-+]?\\d+)?|[\\x{2010}-\\x{2015}\\x{2212}][\\p{Nd}.,]*)${END}`,
  },
  slotWord: { name: "keyword.operator.word.headnote", match: `${START}(?:${SLOT_WORDS})${END}` },
  // A word before a text is one that announces it, whatever else it may be.
  choice: { name: "constant.language.choice.headnote", match: `${START}(?:${CHOICES})${END}(?!\\s+")` },
  air: { name: "support.constant.air.headnote", match: `${START}(?:${AIRS})${END}` },
  word: { name: "variable.other.headnote", match: `${START}[A-Za-z0-9][A-Za-z0-9._-]*${END}` },
  text: {
    patterns: [
      {
        name: "string.quoted.double.headnote",
        match: '(")(?:[^"\\\\]|\\\\.)*(")',
        captures: {
          0: { patterns: [{ name: "constant.character.escape.headnote", match: '\\\\["\\\\]' }] },
          1: { name: "punctuation.definition.string.begin.headnote" },
          2: { name: "punctuation.definition.string.end.headnote" },
        },
      },
      { name: "invalid.illegal.unclosed-text.headnote", match: '".*$' },
    ],
  },
};

/** The grammar as JSON, ending in a line end. */
export function textmate(): string {
  const grammar = {
    name: "Headnote",
    scopeName: "source.headnote",
    fileTypes: ["headnote"],
    patterns: include(
      "conflict",
      "comment",
      "version",
      "includeLine",
      "ownLine",
      "columns",
      "heading",
      "property",
      "row",
      "text",
      "void",
      "number",
    ),
    repository,
  };
  return `${JSON.stringify(grammar, null, 2)}\n`;
}
