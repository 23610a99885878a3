// Numbers as messages say them: in the record's units, with no more digits than they deserve.
import { columnValues } from "../../shared/calc/column-values.ts";
import type { Run } from "../../shared/model/model.ts";
import type { RowResult } from "../../shared/model/result.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import type { Quantity } from "../../shared/quantity/quantity.ts";
import { fromSI, type Unit } from "../../shared/quantity/unit.ts";

export { percent, signed } from "../../shared/render/shown-percent.ts";

/** An SI value in a unit, to about four figures, without zeros that say nothing. */
export function inUnit(value: number, unit: Unit): string {
  const text = figures(fromSI(value, unit));
  return `${text.includes(".") ? text.replace(/\.?0+$/, "") : text} ${unit.symbol}`;
}

/** A number to about four figures, never more than six decimals. */
export function figures(value: number): string {
  const size = Math.abs(value);
  const decimals =
    size === 0 || !Number.isFinite(size) ? 1 : Math.min(6, Math.max(0, 3 - Math.floor(Math.log10(size))));
  return formatFixed(value, decimals);
}

/** A quantity as it was written. */
export function written(quantity: Quantity): string {
  return `${quantity.text} ${quantity.unit.symbol}`;
}

/** A row's lift as it was written, with its column's unit. */
export function liftWords(run: Run, { row }: RowResult): string {
  const unit = run.table?.columns.find((column) => column.name === "lift")?.unit?.symbol ?? "";
  return `${columnValues(run.table, "lift")?.cell(row)?.text ?? "-"} ${unit}`.trimEnd();
}
