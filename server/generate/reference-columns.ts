// The part of the reference that lists the columns of tables.
import { COLUMNS } from "../../grammar/columns.ts";
import { dimensionName } from "../../shared/quantity/dimension.ts";
import { anchor, code, table } from "./markdown.ts";

/** Every column, what it measures, and the blocks whose table may have it. */
export function columnsReference(): string {
  const rows = COLUMNS.map(({ name, dimensions, within, doc, example }) => [
    `${anchor(`column-${name}`)}${code(example[0])}`,
    dimensions.length === 0 ? "a word, no unit" : dimensions.map(dimensionName).join(" or "),
    within.map((block) => `[${block}](#block-${block})`).join(", "),
    `${doc} Example: ${code(example[1])}`,
  ]);
  const intro = `A run has \`lift\`, \`depression\` and the column of what its bench shows: \`flow\` (shows flow or meter-flow),
\`reading\` with \`range\` (shows percent), \`drop\` (shows drop) or \`signal\` (shows signal).`;
  return [
    `${anchor("columns")}\n\n## Columns`,
    intro,
    table(["column", "measures", "in the table of", "meaning"], rows),
  ].join("\n\n");
}
