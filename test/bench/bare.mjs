// The yardstick: a program that splits the same text, converts its cells to numbers and scales them, and nothing else.
import { readFileSync } from "node:fs";

const rows = [];
for (const path of process.argv.slice(2)) {
  for (const line of readFileSync(path, "utf8").split("\n")) {
    const row = [];
    for (const cell of line.trim().split(/\s+/)) {
      const value = Number(cell);
      if (!Number.isNaN(value)) row.push(value * 0.0254);
    }
    rows.push(row);
  }
}
process.stdout.write(`${rows.length} lines\n`);
