// The same readings as a record, as YAML and as JSON, with as many lines each.
import { aloneRecord } from "./records.ts";

/** A text, and a digit in the middle of it that can be typed over. */
export interface Text {
  readonly text: string;
  readonly line: number;
  readonly digit: number;
}

const COLUMNS = ["lift", "depression", "flow", "settle"];

/** What both other servers check every line against. */
export const SCHEMA = {
  type: "object",
  required: ["rows"],
  properties: {
    $schema: { type: "string" },
    rows: {
      type: "array",
      items: {
        type: "object",
        required: COLUMNS,
        additionalProperties: false,
        properties: Object.fromEntries(COLUMNS.map((name) => [name, { type: "number", minimum: 0 }])),
      },
    },
  },
};

/** A clean record; with `slipping` every second row is off its target and every fifth is no number. */
export function recordText(lines: number, slipping = false): Text {
  const text = aloneRecord(lines);
  if (!slipping) return marked(text, /\d(?=\s+\d+\.\d\s*$)/);
  const slips = text.split("\n").map((line, index) => {
    if (!/^ +0\.\d+ /.test(line)) return line;
    return index % 5 === 0 ? line.replace(/\d\.\d$/, "fast") : line.replace(/ 2[78]\.\d /, " 25.1 ");
  });
  return marked(slips.join("\n"), /\d(?=\s+\d+\.\d\s*$)/);
}

export function yamlText(lines: number, schema: string): Text {
  const rows = readings(lines - 2).map((row) => `  - { ${pairs(row, (name) => name)} }`);
  return marked(`# yaml-language-server: $schema=${schema}\nrows:\n${rows.join("\n")}\n`, /\d(?=, settle)/);
}

export function jsonText(lines: number, schema: string): Text {
  const rows = readings(lines - 4).map((row) => `{ ${pairs(row, (name) => `"${name}"`)} }`);
  const text = `{\n"$schema": "${schema}",\n"rows": [\n${rows.join(",\n")}\n]}\n`;
  return marked(text, /\d(?=, "settle)/);
}

/** The rows of a record with about as many lines; there are headings among them, so that some are used twice. */
function readings(count: number): readonly (readonly string[])[] {
  const rows = aloneRecord(count + 100)
    .split("\n")
    .filter((line) => /^ +0\.\d+ /.test(line))
    .map((line) => line.trim().split(/ +/));
  return Array.from({ length: count }, (_, index) => rows[index % rows.length] ?? []);
}

function pairs(row: readonly string[], quoted: (name: string) => string): string {
  return COLUMNS.map((name, index) => `${quoted(name)}: ${Number(row[index])}`).join(", ");
}

function marked(text: string, digit: RegExp): Text {
  const lines = text.split("\n");
  for (let line = Math.floor(lines.length / 2); line < lines.length; line++) {
    const found = digit.exec(lines[line] ?? "");
    if (found !== null) return { text, line, digit: found.index };
  }
  throw new RangeError("no line to type in");
}
