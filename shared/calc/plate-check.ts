// Lays the readings of a check plate beside its certificate: the bench's own scale, checked against something known.
import type { Plate, PlateCheck, Run, Session } from "../model/model.ts";
import { present } from "../model/present.ts";
import type { PlateComparison, PlateResult, Repeatability, RowResult } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { namedAir } from "./air-state.ts";
import { ComputedRows } from "./computed-rows.ts";
import { widening } from "./repeatability.ts";
import { type Find, settle } from "./setup.ts";

/** What a plate check stands on: a run's set-up, quoted at the certificate's depression and in its air. */
export interface PlateSetup {
  readonly setup: Setup;
  readonly plate?: Plate;
}

/**
 * The settled set-up of a plate check of a session. The plate is read in the session's conditions, its leak among them.
 * A certificate without an air is taken to speak of the air of the day. Never throws; what is not found is missing.
 */
export function settlePlateCheck(check: PlateCheck, session: Session | undefined, find: Find): PlateSetup {
  const plate = check.plate && find("plate", check.plate.id);
  const run: Run = {
    kind: "run",
    id: check.plate?.id ?? "",
    origin: check.origin,
    expectations: [],
    notes: [],
    ...present({ table: check.table }),
  };
  const settled = settle(run, session, find);
  const certificate = plate?.flow;
  const air = certificate?.in && namedAir(certificate.in);
  const setup: Setup = {
    ...settled,
    quote: certificate === undefined ? settled.quote : { value: certificate.depression, source: "run" },
    reference: air && { value: air, source: "run" },
  };
  return { setup, ...present({ plate }) };
}

/** The readings of a plate check, computed as those of a run are, and what they come to beside the certificate. */
export function evaluatePlateCheck({ setup, plate }: PlateSetup, repeatability: Repeatability): PlateResult {
  const rows = new ComputedRows(setup).results;
  const comparison = plate && compared(plate, setup, rows, repeatability);
  return { setup, rows, ...present({ plate, comparison }) };
}

/**
 * Mean of the readings over the certified flow, and the normalised error En of the two (ISO 13528, with expanded
 * uncertainties): the plate's own, and that of the readings from repeatability, written numbers, air, the bench's scale
 * and the leak. How much of the leak stays when the plate takes the head's place is not known, anything from all of it
 * to nothing: its root mean square is leak/sqrt(3) (JCGM 100:2008, 4.3.7).
 */
function compared(
  plate: Plate,
  setup: Setup,
  rows: readonly RowResult[],
  repeatability: Repeatability,
): PlateComparison | undefined {
  const certificate = plate.flow;
  if (certificate === undefined || !(certificate.flow.value > 0)) return undefined;
  if (certificate.in !== undefined && setup.reference === undefined) return undefined;
  const counting = rows.flatMap(({ row, flow, variance }) =>
    row.void !== undefined || flow === undefined || !(flow.measured > 0) ? [] : [{ flow, variance }],
  );
  const count = counting.length;
  if (count === 0) return undefined;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / count;
  const certified = certificate.flow.value;
  const flow = mean(counting.map((row) => row.flow.corrected));
  const difference = flow / certified - 1;
  const plain = { certified, flow, readings: count, difference };
  if (plate.uncertainty === undefined) return plain;

  const leak = mean(counting.map((row) => row.flow.leak / row.flow.measured)) / Math.sqrt(3);
  const one = repeatability.deviation * widening(repeatability);
  const written = mean(counting.map((row) => row.variance));
  const scale = (setup.bench?.uncertainty?.value ?? 0) / 2;
  const reading = (flow / certified) * Math.sqrt(one ** 2 / count + written + leak ** 2 + scale ** 2);
  const uncertainty = 2 * Math.hypot(reading, plate.uncertainty.value / 2);
  return { ...plain, uncertainty, ...(uncertainty > 0 && { en: difference / uncertainty }) };
}
