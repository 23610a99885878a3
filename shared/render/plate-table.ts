// The plate checks of a record as one table, before anything is said about how it is set on a page.
import type { PlateResult } from "../model/result.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { quantityWords } from "./run-facts.ts";
import type { TableColumn } from "./run-table.ts";
import { shownNumber, shownUncertainty } from "./shown-number.ts";
import type { PlateInput } from "./table-input.ts";

const NOTHING = "-";
const EN_DECIMALS = 2;
const SHARE_DECIMALS = 2;

/** What the columns stand for. */
export const PLATE_TABLE_HEAD =
  "mean flow at the certificate's depression and in its air; ±U: expanded uncertainty of the difference (k = 2)";

/** One line a plate check; empty where there is none. */
export function plateTable(plates: readonly PlateInput[]): readonly TableColumn[] {
  if (plates.length === 0) return [];
  const column = (
    title: string,
    unit: string,
    cell: (plate: PlateInput) => string | undefined,
    isNumber = true,
  ): TableColumn => ({
    title,
    unit,
    isNumber,
    cells: plates.map((plate) => cell(plate) ?? NOTHING),
  });
  const share = (value: number | undefined) =>
    value === undefined ? undefined : formatFixed(100 * value, SHARE_DECIMALS);
  return [
    column("plate", "", ({ result }) => result.setup.run.id, false),
    column("bench", "", ({ result }) => result.setup.bench?.id, false),
    column("readings", "", ({ result }) => String(result.comparison?.readings ?? 0)),
    column("flow", "", ({ result }) => flowWords(result), false),
    column("certified", "", ({ result }) => certificateWords(result), false),
    column("difference", "%", ({ result }) => share(result.comparison?.difference)),
    column("±U", "%", ({ result: { comparison } }) =>
      comparison?.uncertainty === undefined ? undefined : shownUncertainty(100 * comparison.uncertainty),
    ),
    column("En", "", ({ result: { comparison } }) =>
      comparison?.en === undefined ? undefined : formatFixed(comparison.en, EN_DECIMALS),
    ),
    column("judgement", "", ({ result }) => judgementWords(result), false),
    column("findings", "", ({ findings }) => findings.join(", "), false),
  ].filter(({ title, cells }) => title !== "findings" || cells.some((cell) => cell !== ""));
}

/** Agreement of the readings with the certificate, or why it cannot be told. */
export function judgementWords({ plate, rows, comparison }: PlateResult): string {
  if (plate === undefined) return "plate not found";
  if (plate.flow === undefined) return "no certified flow";
  if (comparison === undefined) return rows.length === 0 ? "no reading" : "no flow to compare";
  if (comparison.uncertainty === undefined) return "plate states no uncertainty";
  return agrees(comparison.difference, comparison.uncertainty) ? "agrees" : "off";
}

/** Whether a difference lies within its expanded uncertainty: |En| at most 1 (ISO 13528). */
export function agrees(difference: number, uncertainty: number): boolean {
  return Math.abs(difference) <= uncertainty;
}

function flowWords({ plate, comparison }: PlateResult): string | undefined {
  const unit = plate?.flow?.flow.unit;
  if (unit === undefined || comparison === undefined) return undefined;
  return `${shownNumber(fromSI(comparison.flow, unit), comparison.uncertainty)} ${unit.symbol}`;
}

function certificateWords({ plate, setup }: PlateResult): string | undefined {
  if (plate?.flow === undefined) return undefined;
  const { flow, depression } = plate.flow;
  const air = setup.reference === undefined ? "" : ` in ${setup.reference.value.name}`;
  return `${quantityWords(flow)} at ${quantityWords(depression)}${air}`;
}
