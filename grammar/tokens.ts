// The token types of one line; together they cover every character, so that nothing in a file is ever lost.
import { createToken, Lexer, type TokenType } from "chevrotain";

/** Anything between blanks, quotes and brackets. */
export const Word = createToken({ name: "Word", pattern: Lexer.NA });

/** A word that can be a cell of a row: all but `void`. */
export const CellWord = createToken({ name: "CellWord", pattern: Lexer.NA, categories: [Word] });

/** A character that has no place where it stands. */
export const Stray = createToken({ name: "Stray", pattern: Lexer.NA });

export const WhiteSpace = createToken({ name: "WhiteSpace", pattern: /[\s\uFEFF]+/ });

/** A `#` begins a comment only at the start of a line or after white space. */
export const Comment = createToken({
  name: "Comment",
  pattern: /(?<!\S)#[\s\S]*/,
  start_chars_hint: ["#"],
  line_breaks: false,
});

/**
 * Keywords, names, units, dates. Spelled out as ranges (all but blanks, control characters, quote and brackets), since
 * a complement set would switch the lexer's dispatch by first character off.
 */
export const PlainWord = createToken({
  name: "PlainWord",
  pattern:
    /[!#-Z\\^-~\u00A1-\u167F\u1681-\u1FFF\u200B-\u2027\u202A-\u202E\u2030-\u205E\u2060-\u2FFF\u3001-\uFEFE\uFF00-\uFFFF]+/,
  categories: [CellWord],
});

/** A plain decimal that stands alone, by far the most frequent word of a record. */
export const Decimal = createToken({
  name: "Decimal",
  pattern: /-?[0-9]+(?:\.[0-9]+)?/,
  longer_alt: PlainWord,
  categories: [CellWord],
});

/** Marks a row that is kept but never used. */
export const Void = createToken({ name: "Void", pattern: "void", longer_alt: PlainWord, categories: [Word] });

/** A quote right behind a digit or a left bracket that no text could begin with: `2.020"`, `28"H2O`, `lift["]`. */
export const InchMark = createToken({
  name: "InchMark",
  pattern: /(?<=[0-9[])"(?:[Hh][2\u2082][Oo]|[Ww][CcGg])?(?![^\s\]])/,
  start_chars_hint: ['"'],
  line_breaks: false,
  categories: [CellWord],
});

export const Text = createToken({ name: "Text", pattern: /"(?:[^"\\]|\\[\s\S])*"/ });

/** A text whose closing quote is missing runs to the end of its line and no further. */
export const UnclosedText = createToken({ name: "UnclosedText", pattern: /"[\s\S]*/, categories: [Text] });

export const LeftBracket = createToken({ name: "LeftBracket", pattern: "[" });
export const RightBracket = createToken({ name: "RightBracket", pattern: "]", categories: [Stray] });

/** Keeps the lexer total: a single character that nothing else takes. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters must be kept like any other.
export const Other = createToken({ name: "Other", pattern: /[\u0000-\uFFFF]/, categories: [Stray] });

/** In the order in which they are tried. */
export const tokenTypes: TokenType[] = [
  WhiteSpace,
  Comment,
  Decimal,
  Void,
  PlainWord,
  InchMark,
  Text,
  UnclosedText,
  LeftBracket,
  RightBracket,
  Other,
  Word,
  CellWord,
  Stray,
];
