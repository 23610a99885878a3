// Names of a bench's ranges, which a bench gives and the rows of its readings use.
import { cellAt } from "../../shared/model/cells.ts";
import type { Bench, Table } from "../../shared/model/model.ts";
import type { Span } from "../../shared/text/span.ts";
import type { Scope } from "../analysis/scope.ts";
import type { Placed } from "../analysis/source-file.ts";
import { benchOf } from "./bench-of.ts";
import { blockAt } from "./line-at.ts";
import { isSamePlace, type View } from "./names.ts";
import { isAt, type Position } from "./position.ts";

/** A range's name as it stands in a file. */
export interface RangePlace {
  readonly id: string;
  /** Where the bench of the range stands. */
  readonly bench: Placed;
  readonly path: string;
  /** Counts in the file. */
  readonly span: Span;
  readonly role: "definition" | "use";
}

/** The range's name at a place of a file; `undefined` where its bench is not known. */
export function rangeAt(scope: Scope, position: Position): RangePlace | undefined {
  const start = blockAt(scope.file.outline, position.line)?.start;
  const placed = scope.file.placed.find((each) => each.start === start);
  return placed && rangesIn(scope, placed).find(({ span }) => isAt(span, position));
}

/** All places of a range in some files, first its bench's own line where that is among them. */
export function rangePlaces({ id, bench }: RangePlace, views: readonly View[]): readonly RangePlace[] {
  return views
    .flatMap((view) => view.file.placed.flatMap((placed) => rangesIn(view, placed)))
    .filter((each) => each.id === id && isSamePlace(each.bench, bench));
}

/** The names of a bench's ranges. */
export function rangeNames({ entity }: Placed): readonly string[] {
  return entity.kind === "bench" ? entity.ranges.map(({ name }) => name) : [];
}

function rangesIn(view: View, placed: Placed): readonly RangePlace[] {
  const { entity } = placed;
  if (entity.kind === "bench") return definitions(view, placed, entity);
  const id = benchOf(view, entity)?.id;
  const bench = id === undefined ? undefined : view.locate("bench", id);
  return bench === undefined || !("table" in entity) ? [] : uses(placed, entity.table, bench);
}

function definitions({ file }: View, bench: Placed, { ranges }: Bench): readonly RangePlace[] {
  return ranges.flatMap(({ name, span }): RangePlace[] => {
    const line = bench.start + span.line;
    const node = file.outline.lines[line];
    const atom = node?.kind === "directive" ? node.atoms[0] : undefined;
    if (atom === undefined) return [];
    const { from, to } = atom;
    return [{ id: name, bench, path: bench.path, span: { line, from, to }, role: "definition" }];
  });
}

function uses({ start, path }: Placed, table: Table | undefined, bench: Placed): readonly RangePlace[] {
  const index = table?.columns.findIndex(({ name }) => name === "range") ?? -1;
  if (table === undefined || index < 0) return [];
  return table.rows.flatMap((row): RangePlace[] => {
    const cell = cellAt(row, index);
    if (cell === undefined || cell.text === "-") return [];
    const span = { line: start + row.line, from: cell.from, to: cell.to };
    return [{ id: cell.text, bench, path, span, role: "use" }];
  });
}
