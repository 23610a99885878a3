// Values as the machine output writes them: in a unit and in SI, 12 significant digits.
import type { ReportQuantity } from "../messages/report.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { rounded } from "./rounded.ts";

export function reported(si: number, unit: Unit): ReportQuantity {
  return { value: rounded(fromSI(si, unit)), unit: unit.symbol, si: rounded(si) };
}

/** `null` for what is missing or not finite. */
export function reportedOrNull(si: number | undefined, unit: Unit): ReportQuantity | null {
  return si === undefined || !Number.isFinite(si) ? null : reported(si, unit);
}

/** Of a difference: an offset of the unit's scale does not count. */
export function reportedSpan(si: number, unit: Unit): ReportQuantity {
  return { value: rounded(si / unit.factor), unit: unit.symbol, si: rounded(si) };
}
