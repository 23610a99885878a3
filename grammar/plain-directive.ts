// Reads the lines that say something in plain words: a keyword, words and texts between blanks; heads of columns.
import { isColumnName } from "./columns.ts";
import type { Atom, ColumnHead, ColumnsLine, DirectiveLine } from "./tree.ts";

/** A word of characters that mean nothing by themselves, or a text without escapes, and behind it a blank or the end. */
const ATOM = /[\t ]*(?:[!$-Z^-~]+|"[^"\\]*")(?=[\t ]|$)/y;
const HEAD = /[\t ]*([a-z]+)(?:\[([!$-Z^-~]+)\])?(?=[\t ]|$)/y;
/** What begins with a letter is neither a row nor a conflict marker. */
const KEYWORD = /^[\t ]*[A-Za-z]/;
const NOTHING: DirectiveLine["findings"] = [];

/**
 * The node of a plain line, word by word; `undefined` for every other line, which is left to the parser. It gives what the
 * parser gives (a test holds the two together). Nearly every line of a record is plain, so that most records are read
 * without a parser.
 */
export function plainDirective(text: string): DirectiveLine | ColumnsLine | undefined {
  if (!KEYWORD.test(text)) return undefined;
  const end = text.trimEnd().length;
  const keyword = atomAt(text, 0);
  if (keyword === undefined) return plainColumns(text, end);
  // Some keywords name a column too; which of the two it is shows in the whole line.
  const columns = isColumnName(keyword.text) ? plainColumns(text, end) : undefined;
  if (columns !== undefined) return columns;
  const atoms: Atom[] = [];
  for (let at = keyword.to; at < end; ) {
    const atom = atomAt(text, at);
    if (atom === undefined) return undefined;
    atoms.push(atom);
    at = atom.to;
  }
  return { kind: "directive", keyword, atoms, text, findings: NOTHING };
}

/** Tested alone, since a match with its groups is by far larger than the atom. */
function atomAt(text: string, at: number): Atom | undefined {
  ATOM.lastIndex = at;
  if (!ATOM.test(text)) return undefined;
  const to = ATOM.lastIndex;
  let from = at;
  while (text[from] === " " || text[from] === "\t") from++;
  return text[from] === '"'
    ? { kind: "text", text: text.slice(from + 1, to - 1), from, to }
    : { kind: "word", text: text.slice(from, to), from, to };
}

/** Heads that are all known columns; without any unit it takes two of them to be more than a keyword. */
function plainColumns(text: string, end: number): ColumnsLine | undefined {
  const heads: ColumnHead[] = [];
  for (let at = 0; at < end; at = HEAD.lastIndex) {
    HEAD.lastIndex = at;
    const [, name, unit] = HEAD.exec(text) ?? [];
    if (name === undefined || !isColumnName(name)) return undefined;
    heads.push(headOf(name, unit, HEAD.lastIndex));
  }
  if (heads.length === 1 && heads[0]?.unit === undefined) return undefined;
  return { kind: "columns", heads, text, findings: NOTHING };
}

function headOf(name: string, unit: string | undefined, to: number): ColumnHead {
  if (unit === undefined) return { name: { kind: "word", text: name, from: to - name.length, to } };
  const from = to - 1 - unit.length;
  return {
    name: { kind: "word", text: name, from: from - 1 - name.length, to: from - 1 },
    unit: { kind: "word", text: unit, from, to: to - 1 },
  };
}
