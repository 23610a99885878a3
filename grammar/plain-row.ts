// Reads the rows that a record is mostly made of: plain decimals and `-` between blanks, and nothing else.
import type { RowLine } from "./tree.ts";

const TAB = 9;
const BLANK = 32;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;

/** Up to this many digits, digits and power of ten are exact doubles and their quotient is the nearest double. */
const EXACT_DIGITS = 15;
const POWERS_OF_TEN: readonly number[] = Array.from({ length: EXACT_DIGITS + 1 }, (_, n) => 10 ** n);
const NOTHING: RowLine["findings"] = [];

/** Where a line is gathered before its size is known: a row then holds no more than it needs. */
const values: number[] = [];
const bounds: number[] = [];

/**
 * The node of a plain row, in one pass over its characters; `undefined` for every other line, which is left to the
 * parser. It gives what the parser gives (a test holds the two together), at a fraction of the time, so that a year of
 * records is read in the time of one.
 */
export function plainRow(text: string): RowLine | undefined {
  const end = text.length;
  let count = 0;
  let to = 0;
  for (let at = 0; at < end; ) {
    let code = text.charCodeAt(at);
    if (code === BLANK || code === TAB) {
      at++;
      continue;
    }
    const from = at;
    const negative = code === MINUS;
    if (negative) code = ++at < end ? text.charCodeAt(at) : BLANK;
    let whole = 0;
    const first = at;
    while (code >= ZERO && code <= NINE) {
      whole = whole * 10 + (code - ZERO);
      code = ++at < end ? text.charCodeAt(at) : BLANK;
    }
    let digits = at - first;
    let decimals = 0;
    if (code === POINT && digits > 0) {
      code = ++at < end ? text.charCodeAt(at) : BLANK;
      const point = at;
      while (code >= ZERO && code <= NINE) {
        whole = whole * 10 + (code - ZERO);
        code = ++at < end ? text.charCodeAt(at) : BLANK;
      }
      decimals = at - point;
      digits += decimals;
      if (decimals === 0) return undefined;
    }
    if (code !== BLANK && code !== TAB) return undefined;
    if (digits > EXACT_DIGITS || (digits === 0 && !negative)) return undefined;
    to = at;
    bounds[2 * count] = from;
    bounds[2 * count + 1] = to;
    const size = whole / (POWERS_OF_TEN[decimals] ?? 1);
    values[count] = digits === 0 ? Number.NaN : negative ? 0 - size : size;
    count++;
  }
  if (count === 0) return undefined;
  return makeRow(text, values.slice(0, count), sharedBounds(2 * count), to);
}

let last: readonly number[] = [];

/** The bounds that were gathered. The cells of a table mostly stand below each other, and rows can share what is equal. */
function sharedBounds(count: number): readonly number[] {
  let same = last.length === count;
  for (let at = 0; same && at < count; at++) same = last[at] === bounds[at];
  if (!same) last = bounds.slice(0, count);
  return last;
}

function makeRow(text: string, values: readonly number[], bounds: readonly number[], to: number): RowLine {
  return { kind: "row", text, findings: NOTHING, values, bounds, to, remark: undefined, void: undefined };
}
