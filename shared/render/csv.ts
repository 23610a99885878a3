// Writes comma-separated values that a spreadsheet reads as data and never as formulas.

/** A text, a number, or nothing. */
export type CsvCell = string | number | undefined;

/** What a spreadsheet takes for the beginning of a formula, also behind blanks that it strips, and in wide letters. */
const FORMULA = /^(\s*[=+\-@＝＋－＠]|[\t\r])/;
/** Some spreadsheets also cut at semicolons and tabs, and would read what follows as a cell of its own. */
const NEEDS_QUOTES = /[",;\t\r\n]/;

/**
 * Rows as RFC 4180 lines, each ended by CRLF. Numbers stay numbers; a text that a spreadsheet would read as a formula
 * gets an apostrophe in front.
 */
export function csv(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(field).join(",")}\r\n`).join("");
}

function field(cell: CsvCell): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(cell) : "";
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
