// Reads numbers as the format allows them, and says of any other spelling what is wrong and how to mend it.

import { findUnit } from "./unit.ts";

/** Why a word is not a number of the format. */
export type NumberProblem =
  | "decimal-comma"
  | "trailing-point"
  | "plus-sign"
  | "exponent"
  | "foreign-digits"
  | "foreign-minus"
  | "zero-denominator"
  | "too-long"
  | "not-a-number";

/** A number that was read. */
export interface WrittenNumber {
  /** Always finite, and never the negative zero. */
  readonly value: number;
  /** Size of one step of the last written digit: 0.001 for `0.400`, 1 for `28`, 0 for a fraction, which is exact. */
  readonly step: number;
}

/** A word that is not a number of the format. */
export interface NumberFault {
  /** The first thing that is wrong. */
  readonly problem: NumberProblem;
  /**
   * Spellings that can be read and mean the same, the likeliest first: two for `1,000`, whose comma may be a decimal or a
   * thousands mark; none where the meaning is not plain.
   */
  readonly mended: readonly string[];
}

const ZERO = 0x30;
const NINE = 0x39;
const MINUS = 0x2d;
const POINT = 0x2e;

/** More digits than this are a slip of the keyboard, and enough more of them would not be finite. */
const MOST_DIGITS = 30;
/** Up to this many digits, digits and power of ten are exact doubles and their quotient is the nearest double. */
const EXACT_DIGITS = 15;
const LONGEST_WORD = 100;

const POWERS_OF_TEN: readonly number[] = Array.from({ length: MOST_DIGITS + 1 }, (_, n) => Number(`1e${n}`));

const NOT_A_NUMBER: NumberFault = { problem: "not-a-number", mended: [] };
const TOO_LONG: NumberFault = { problem: "too-long", mended: [] };
const ZERO_DENOMINATOR: NumberFault = { problem: "zero-denominator", mended: [] };

const FRACTION = /^(-?)(?:(\d+)-)?(\d+)\/(\d+)$/;
/** Hyphens, dashes and minus signs of Unicode other than the ASCII one. */
const FOREIGN_MINUS = /[\u2010-\u2015\u2212\u207b\ufe63\uff0d]/g;
const EXPONENT = /^(-?)(\d*)\.?(\d*)[eE]([+-]?\d{1,3})$/;

/**
 * Reads one word as a decimal number (`12`, `0.400`, `.5`, `-3.0`) or a fraction (`11/32`, `1-3/8`, `-1/2`). A single `-`
 * is no number here: what it means is the caller's matter.
 */
export function readNumber(text: string): WrittenNumber | NumberFault {
  const plain = readPlain(text);
  if (plain !== undefined) return plain;
  if (text.length > LONGEST_WORD) return NOT_A_NUMBER;
  return readFraction(text) ?? findFault(text);
}

/** The hot path: one pass over the characters. `undefined` for what is not a plain decimal number. */
function readPlain(text: string): WrittenNumber | NumberFault | undefined {
  const end = text.length;
  const negative = text.charCodeAt(0) === MINUS;
  let whole = 0;
  let digits = 0;
  let point = -1;
  for (let i = negative ? 1 : 0; i < end; i++) {
    const code = text.charCodeAt(i);
    if (code >= ZERO && code <= NINE) {
      whole = whole * 10 + (code - ZERO);
      digits++;
    } else if (code === POINT && point < 0) {
      point = i;
    } else {
      return undefined;
    }
  }
  if (digits === 0 || point === end - 1) return undefined;
  if (digits > MOST_DIGITS) return TOO_LONG;
  const scale = POWERS_OF_TEN[point < 0 ? 0 : end - point - 1] ?? 1;
  const size = digits <= EXACT_DIGITS ? whole / scale : Number(negative ? text.slice(1) : text);
  // Subtracted, not negated: `-0` is zero.
  return { value: negative ? 0 - size : size, step: 1 / scale };
}

function readFraction(text: string): WrittenNumber | NumberFault | undefined {
  const match = FRACTION.exec(text);
  if (match === null) return undefined;
  const [, sign, whole = "0", numerator = "", denominator = ""] = match;
  if (whole.length + numerator.length + denominator.length > MOST_DIGITS) return TOO_LONG;
  if (Number(denominator) === 0) return ZERO_DENOMINATOR;
  const size = Number(whole) + Number(numerator) / Number(denominator);
  return { value: sign === "-" ? 0 - size : size, step: 0 };
}

/** Mends one kind of mistake after another, then keeps what can be read; the first kind met names the problem. */
function findFault(text: string): NumberFault {
  let problem: NumberProblem | undefined;
  let mended: readonly string[] = [text];
  for (const [kind, mend] of MENDS) {
    const next = mended.flatMap(mend);
    if (next.length !== mended.length || next.some((word, i) => word !== mended[i])) problem ??= kind;
    mended = next;
  }
  if (problem === undefined) return NOT_A_NUMBER;
  // An exponent too large to be written out is understood all the same.
  if (mended.length === 0) return { problem, mended };
  const readable = mended.filter(
    (word) => "value" in (readPlain(word) ?? readFraction(word) ?? NOT_A_NUMBER),
  );
  return readable.length === 0 ? NOT_A_NUMBER : { problem, mended: readable };
}

const MENDS: readonly (readonly [NumberProblem, (word: string) => readonly string[]])[] = [
  ["foreign-digits", (word) => [word.replace(/(?![0-9])\p{Nd}/gu, plainDigit)]],
  ["foreign-minus", (word) => [word.replace(FOREIGN_MINUS, "-")]],
  ["plus-sign", (word) => [word.replace(/^\+/, "")]],
  ["decimal-comma", withoutComma],
  ["exponent", withoutExponent],
  ["trailing-point", (word) => [word.replace(/(\d)\.$/, "$1")]],
];

/** Decimal digits of every script stand in Unicode as whole tens, from zero up (The Unicode Standard, section 4.6). */
function plainDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  let first = code;
  while (/\p{Nd}/u.test(String.fromCodePoint(first - 1))) first--;
  return String((code - first) % 10);
}

/** Both readings of a comma where both are possible, the decimal mark first. */
function withoutComma(word: string): readonly string[] {
  if (!word.includes(",")) return [word];
  if (/^-?[1-9]\d{0,2}(,\d{3})+\.\d+$/.test(word)) return [word.replaceAll(",", "")];
  if (/^-?[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(word)) return [word.replaceAll(".", "").replace(",", ".")];
  if (/^-?[1-9]\d{0,2}(,\d{3}){2,}$/.test(word)) return [word.replaceAll(",", "")];
  const asPoint = word.endsWith(",") ? word.slice(0, -1) : word.replace(",", ".");
  return /^-?[1-9]\d{0,2},\d{3}$/.test(word) ? [asPoint, word.replace(",", "")] : [asPoint];
}

/** The number written out; nothing where that would take more digits than a double holds exactly. */
function withoutExponent(word: string): readonly string[] {
  const match = EXPONENT.exec(word);
  if (match === null) return [word];
  const [, sign = "", whole = "", decimals = "", exponent = ""] = match;
  if (whole.length + decimals.length === 0) return [word];
  const point = whole.length + Number(exponent);
  const digits = whole + decimals;
  if (point > EXACT_DIGITS || digits.length - point > EXACT_DIGITS || digits.length > EXACT_DIGITS) return [];
  const before = digits
    .slice(0, Math.max(0, point))
    .padEnd(point, "0")
    .replace(/^0+(?=\d)/, "");
  const after = digits.slice(Math.max(0, point)).padStart(digits.length - point, "0");
  const size = point >= digits.length ? before : `${before || "0"}.${after}`;
  return [sign + size];
}

/**
 * Splits a word such as `2.02in`, `11/32in`, `45deg` or `71.5°F` into its number and its unit, both as written. The
 * number may be one that `readNumber` can only mend. `undefined` unless all of the rest is a known unit, so that names
 * which begin with a digit stay whole.
 */
export function splitNumberUnit(text: string): { number: string; unit: string } | undefined {
  if (text.length > LONGEST_WORD) return undefined;
  const number = /^[\p{Nd}.,/+\-\u2010-\u2015\u2212\u207b\ufe63\uff0d]*\p{Nd}[.,]?(?:[eE][+-]?\d+)?/u.exec(
    text,
  )?.[0];
  if (number === undefined || number.length === text.length) return undefined;
  const unit = text.slice(number.length);
  if (findUnit(unit) === undefined) return undefined;
  const read = readNumber(number);
  return "problem" in read && read.problem === "not-a-number" ? undefined : { number, unit };
}
