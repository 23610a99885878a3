// Values that are likely at a place: what other blocks state there, the lifts that were read, the depression that is held.
import type { Form } from "../../grammar/directive.ts";
import type { Slot } from "../../grammar/slots.ts";
import { cellAt } from "../../shared/model/cells.ts";
import type { Dimension } from "../../shared/quantity/dimension.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import type { Offer } from "./offer.ts";
import type { OpenLine } from "./open-line.ts";
import { seenValues } from "./seen-values.ts";

/** What is set and not measured: a reading that was taken elsewhere is nothing to take over. */
const SET: readonly Dimension[] = ["length", "angle", "pressure", "rotation"];

/** Quantities, number and unit. */
export function usualOffers(
  analysis: Analysis,
  form: Form,
  name: string,
  { type, word }: Slot,
  open: OpenLine,
): readonly Offer[] {
  if (type.kind !== "quantity" || !SET.includes(type.dimension)) return [];
  const target = analysis.scope.file.session?.entity.target;
  const isHeld = type.dimension === "pressure" && word === "at" && target !== undefined;
  const found = [
    ...(name === "lift" ? liftOffers(analysis, form, open) : []),
    ...(isHeld ? [offer(`${target.text} ${target.unit.symbol}`, "the target")] : []),
    ...seenOffers(analysis.scope, form, name, open.line),
  ];
  return [...new Map(found.toReversed().map((each) => [each.label, each])).values()].toReversed();
}

/** What other blocks state in the same place; what may be stated many times, as a note, is said anew each time. */
export function seenOffers(scope: Scope, form: Form, name: string, line: number): readonly Offer[] {
  if (form.form !== "property") return [];
  const isText = form.slots[name]?.type.kind === "text";
  if (isText && form.repeatable) return [];
  return seenValues(scope, form, name, line).map(({ text, block }) => offer(text, `as in ${block}`));
}

/** The lifts of the run that a line speaks of, in the order they were taken. */
function liftOffers(analysis: Analysis, form: Form, open: OpenLine): readonly Offer[] {
  const run = runOf(analysis, form, open);
  const { columns = [], rows = [] } = run?.setup.run.table ?? {};
  const at = columns.findIndex(({ name }) => name === "lift");
  const unit = columns[at]?.unit;
  if (run === undefined || unit === undefined) return [];
  const lifts = rows.flatMap((row) => (row.void === undefined ? (cellAt(row, at)?.text ?? []) : []));
  const words = `a lift of run ${run.placed.entity.id}`;
  return [...new Set(lifts)]
    .filter((text) => text !== "-")
    .map((text) => offer(`${text} ${unit.symbol}`, words));
}

/** The run of the block; for a trace or ladder, whose run is yet to be named, the one above it, else the first. */
function runOf({ settled }: Analysis, form: Form, { line, placed }: OpenLine): SettledRun | undefined {
  if (form.form === "heading") return settled.findLast((run) => run.placed.start < line) ?? settled[0];
  const entity = placed?.block.entity;
  if (entity?.kind === "run") return settled.find((run) => run.placed.start === placed?.start);
  return entity?.kind === "map" ? settled.find((run) => run.placed.entity.id === entity.of?.id) : undefined;
}

function offer(text: string, detail: string): Offer {
  return { label: text, insert: text, kind: "value", detail };
}
