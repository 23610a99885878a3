// Reads the columns of a log that a trace names: a CSV file as loggers write them.
import type { Channel, Trace } from "../../shared/model/model.ts";
import type { TraceProblem, TraceSamples } from "../../shared/model/trace-result.ts";
import { findUnit, toSI, type Unit } from "../../shared/quantity/unit.ts";

/** Loggers write some lines about themselves before the head; it is looked for in so many. */
const MOST_BEFORE_HEAD = 60;
/** What stands between the cells of a log, one of these. */
const SEPARATORS = [",", ";", "\t", "|"] as const;

export type ReadLog = { readonly samples: TraceSamples } | { readonly problem: TraceProblem };

interface Wanted {
  readonly column: string;
  readonly unit: Unit;
  readonly at: number;
  readonly values: Float64Array;
}

/**
 * The samples of a log, SI; NaN where a cell is no number. Separators are found out; where they are no commas, a decimal comma
 * is read. Names above the columns may carry their unit, and so may a line below them: one that is not the record's own is
 * a problem.
 */
export function readLog(text: string, log: NonNullable<Trace["log"]>): ReadLog {
  const channels = [log.time, log.depression, ...(log.flow === undefined ? [] : [log.flow])];
  const room = lineCount(text);
  const before: (readonly string[])[] = [];
  let separator: string = SEPARATORS[0];
  let wanted: readonly Wanted[] | undefined;
  let problem: TraceProblem | undefined;
  let count = 0;
  eachLine(text, (line) => {
    if (wanted === undefined) {
      // The separator is the one that finds all names in one line.
      for (const each of SEPARATORS) {
        const names = cellsOf(line, each);
        wanted = headed(names, channels, room);
        separator = each;
        if (wanted !== undefined) return true;
        if (names.length > 1 || each === SEPARATORS[0]) before.push(names);
      }
      return before.length < MOST_BEFORE_HEAD;
    }
    const row = cellsOf(line, separator);
    const hasDecimalComma = separator !== ",";
    if (count === 0 && wanted.every(({ at }) => Number.isNaN(numberOf(row[at], hasDecimalComma)))) {
      problem ??= otherUnit(wanted, row);
      if (unitsIn(row)) return true;
    }
    for (const { at, unit, values } of wanted) values[count] = toSI(numberOf(row[at], hasDecimalComma), unit);
    count++;
    return true;
  });
  if (wanted === undefined) return { problem: missingColumn(before, channels) };
  problem ??= wanted
    .map(({ column, unit }) => bracketUnit(column, unit))
    .find((found) => found !== undefined);
  if (problem !== undefined) return { problem };
  const [time, depression, display] = wanted.map(({ values }) => values.subarray(0, count));
  if (time === undefined || depression === undefined) return { problem: missingColumn(before, channels) };
  return { samples: display === undefined ? { time, depression } : { time, depression, display } };
}

/**
 * The names above the columns of a log: those of the first line whose cells have as many numbers below them, or below a line
 * of units.
 */
export function logColumns(text: string): readonly string[] {
  const lines: string[] = [];
  eachLine(text, (line) => lines.push(line) < MOST_BEFORE_HEAD);
  for (const separator of SEPARATORS) {
    const rows = lines.map((line) => cellsOf(line, separator));
    const isNumbers = (row: readonly string[] = [], width: number): boolean =>
      row.length === width && row.every((cell) => !Number.isNaN(numberOf(cell, separator !== ",")));
    const head = rows.find(
      (row, index) =>
        row.length > 1 &&
        !isNumbers(row, row.length) &&
        (isNumbers(rows[index + 1], row.length) ||
          (unitsIn(rows[index + 1] ?? []) && isNumbers(rows[index + 2], row.length))),
    );
    if (head !== undefined) return head.map((name) => name.trim()).filter((name) => name !== "");
  }
  return [];
}

/** The lines of a log that are not empty, until `take` wants no more. */
function eachLine(text: string, take: (line: string) => boolean): void {
  const end = text.includes("\n") ? "\n" : "\r";
  for (let from = text.startsWith("\ufeff") ? 1 : 0; from < text.length; ) {
    const found = text.indexOf(end, from);
    const next = found < 0 ? text.length : found;
    const to = text.charCodeAt(next - 1) === RETURN ? next - 1 : next;
    if (to > from && !take(text.slice(from, to))) return;
    from = next + 1;
  }
}

const RETURN = 13;

/** The cells of a line; one in quotes may hold the separator, and a quote written twice (RFC 4180, but for line ends). */
function cellsOf(line: string, separator: string): readonly string[] {
  if (!line.includes('"')) return line.split(separator);
  const cells: string[] = [];
  for (let at = 0; at <= line.length; at++) {
    let cell = "";
    if (line[at] === '"') {
      for (at++; at < line.length; at++) {
        if (line[at] !== '"') cell += line[at];
        else if (line[at + 1] === '"') cell += line[at++];
        else break;
      }
      at++;
    }
    const end = line.indexOf(separator, at);
    const to = end < 0 ? line.length : end;
    cells.push(cell + line.slice(at, to));
    at = to;
  }
  return cells;
}

/** At least as many lines as the text has. */
function lineCount(text: string): number {
  let count = 1;
  for (const end of ["\n", "\r"]) {
    let found = 0;
    for (let at = text.indexOf(end); at >= 0; at = text.indexOf(end, at + 1)) found++;
    count = Math.max(count, found + 1);
  }
  return count;
}

/** Where the columns stand, if this is the line that names them. */
function headed(
  row: readonly string[],
  channels: readonly (Channel | undefined)[],
  room: number,
): readonly Wanted[] | undefined {
  const names = row.map((name) => name.trim());
  const found = channels.flatMap((channel): Omit<Wanted, "values">[] => {
    const at = channel === undefined ? -1 : names.indexOf(channel.column.trim());
    const unit = channel?.unit;
    return channel === undefined || unit === undefined || at < 0
      ? []
      : [{ column: channel.column, unit, at }];
  });
  if (found.length < channels.length) return undefined;
  return found.map((entry) => ({ ...entry, values: new Float64Array(room) }));
}

function missingColumn(
  before: readonly (readonly string[])[],
  channels: readonly (Channel | undefined)[],
): TraceProblem {
  // The line with the most of the names, of equals the first, is the head that was meant.
  const hits = (row: readonly string[]) =>
    channels.filter((channel) => row.some((name) => name.trim() === channel?.column.trim())).length;
  const head = before.reduce<readonly string[]>(
    (best, row) => (hits(row) > hits(best) || best.length === 0 ? row : best),
    [],
  );
  const missing = channels.find((channel) => !head.some((name) => name.trim() === channel?.column.trim()));
  return {
    kind: "no-column",
    column: missing?.column ?? "",
    columns: head
      .map((name) => name.trim())
      .filter((name) => name !== "")
      .slice(0, 12),
  };
}

function numberOf(cell: string | undefined, hasDecimalComma: boolean): number {
  if (cell === undefined || cell.trim() === "") return Number.NaN;
  return Number(hasDecimalComma && cell.includes(",") ? cell.replace(",", ".") : cell);
}

/** Whether a line below the head holds units, in brackets or not. */
function unitsIn(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === "" || unitOf(cell) !== undefined);
}

function unitOf(cell: string): Unit | undefined {
  return findUnit(cell.trim().replace(/^[[(](.*)[\])]$/, "$1"))?.unit;
}

function otherUnit(wanted: readonly Wanted[], row: readonly string[]): TraceProblem | undefined {
  for (const { column, unit, at } of wanted) {
    const found = unitOf(row[at] ?? "");
    if (found !== undefined && found.symbol !== unit.symbol) return mismatch(column, found, unit);
  }
  return undefined;
}

/** A name such as `dp [Pa]` says the unit itself. */
function bracketUnit(column: string, unit: Unit): TraceProblem | undefined {
  const found = findUnit(/[[(]([^\])]+)[\])]\s*$/.exec(column)?.[1]?.trim() ?? "")?.unit;
  return found === undefined || found.symbol === unit.symbol ? undefined : mismatch(column, found, unit);
}

function mismatch(column: string, found: Unit, stated: Unit): TraceProblem {
  return { kind: "other-unit", column, found: found.symbol, stated: stated.symbol };
}
