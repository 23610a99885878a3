// What may stand in a table: columns that the bench needs, the next lift, ranges, and the mark of a void row.
import { type ColumnKind, columnsWithin } from "../../grammar/columns.ts";
import { findMeter } from "../../shared/calc/meters/index.ts";
import type { Bench, Table } from "../../shared/model/model.ts";
import type { Dimension } from "../../shared/quantity/dimension.ts";
import type { Quantity } from "../../shared/quantity/quantity.ts";
import { quantityWords } from "../../shared/render/run-facts.ts";
import { liftText } from "../../shared/render/station-words.ts";
import type { Analysis } from "../analysis/project.ts";
import { benchOf } from "./bench-of.ts";
import type { Offer } from "./offer.ts";
import { nextRow } from "./on-enter.ts";
import type { OpenLine } from "./open-line.ts";
import { runAt } from "./row-at.ts";
import { usedUnits } from "./used-units.ts";

/**
 * Heads that the block's table may have and the line has not: those that no table of the kind can do without, what the
 * bench shows, then the others. Each has the unit that the file writes most.
 */
export function columnOffers(analysis: Analysis, open: OpenLine, heads: string): readonly Offer[] {
  const heading = open.placed?.block.heading;
  if (heading?.columns === undefined) return [];
  const needed = [...heading.columns, ...displayColumns(benchAt(analysis, open))];
  const rank = ({ name, within }: ColumnKind): number => {
    if (needed.includes(name)) return needed.indexOf(name);
    // A column that no other block has is what this one is about: the angle of a cam.
    return needed.length + (within.length === 1 ? 0 : 1);
  };
  const unitsFor = usedUnits(analysis.scope.file.text);
  return columnsWithin(heading.block)
    .filter(({ name }) => !new RegExp(`(?<!\\S)${name}(?![a-z-])`).test(heads))
    .sort((a, b) => rank(a) - rank(b))
    .map((column) => {
      const [favourite] = unitsFor(column.dimensions);
      return {
        label: column.name,
        insert:
          favourite === undefined || favourite.used === 0
            ? column.example[0]
            : headOf(column, favourite.unit.symbol),
        kind: "column",
        detail: column.doc,
      };
    });
}

function headOf({ name }: ColumnKind, unit: string): string {
  return `${name}[${unit}]`;
}

/** What the open bracket of a column may hold. */
export function dimensionsInBracket({ before, placed }: OpenLine): readonly Dimension[] {
  const name = /([A-Za-z-]+)\s*\[[^\]]*$/.exec(before)?.[1];
  const columns = placed === undefined ? [] : columnsWithin(placed.block.heading.block);
  return columns.find((column) => column.name === name)?.dimensions ?? [];
}

/** At the start of a line below a table's head that begins with the lift: the next lift station. */
export function liftOffers(analysis: Analysis, { line }: OpenLine): readonly Offer[] {
  const run = runAt(analysis, line);
  const { table } = run?.setup.run ?? {};
  if (run === undefined || table?.columns[0]?.name !== "lift") return [];
  const { start } = run.placed;
  const above = table.rows.findLast((row) => start + row.line < line);
  const label =
    above === undefined
      ? firstStation(table, run.setup.stations?.value.first)
      : nextRow(analysis, { line: start + above.line, column: above.text.length })
          ?.trim()
          .split(/\s+/)[0];
  const detail = above === undefined ? "first lift" : "next lift";
  return label === undefined ? [] : [{ label, insert: label, kind: "value", detail }];
}

/** The first of the stated stations, in the column's unit. */
function firstStation(table: Table, first: Quantity | undefined): string | undefined {
  const [column] = table.columns;
  if (first === undefined || column?.unit === undefined) return undefined;
  return column.unit.symbol === first.unit.symbol ? first.text : liftText(first.value, column.unit);
}

/** Behind the cells of a row: the bench's ranges where the column takes them, and the mark of a void row. */
export function rowOffers(analysis: Analysis, open: OpenLine): readonly Offer[] {
  const { before } = open;
  const entity = open.placed?.block.entity;
  const table = entity !== undefined && "table" in entity ? entity.table : undefined;
  if (table === undefined || !/^\s*[-\d.]/.test(before)) return [];
  const count = before.trim().split(/\s+/).length;
  if (table.columns[count]?.name === "range") {
    const ranges = benchAt(analysis, open)?.ranges ?? [];
    return ranges.map(({ name, flow }) => ({
      label: name,
      insert: name,
      kind: "name",
      detail: quantityWords(flow),
    }));
  }
  if (count !== table.columns.length) return [];
  const detail = "keep the row but do not use it";
  return [{ label: "void", insert: 'void ""', snippet: 'void "$1"', kind: "keyword", detail }];
}

/** The bench whose display a block's table holds: its own calibration, or readings made on it. */
function benchAt({ scope }: Analysis, { placed }: OpenLine): Bench | undefined {
  const entity = placed?.block.entity;
  if (entity === undefined || entity.kind === "bench") return entity;
  const id = benchOf(scope, entity)?.id;
  return id === undefined ? undefined : scope.find("bench", id);
}

/** The columns of a display's number. */
function displayColumns(bench: Bench | undefined): readonly string[] {
  const kind = bench?.shows?.kind;
  if (kind === undefined) return [];
  const column = kind === "drop" ? "drop" : (findMeter(kind)?.column ?? "flow");
  return (bench?.ranges.length ?? 0) > 1 ? [column, "range"] : [column];
}
