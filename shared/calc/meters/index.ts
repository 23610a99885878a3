// The list of displays that results can be computed from.
import type { Shows } from "../../model/model.ts";
import { flow } from "./flow.ts";
import type { Meter } from "./meter.ts";
import { percent } from "./percent.ts";
import { signal } from "./signal.ts";

export const METERS: readonly Meter[] = [flow, percent, signal];

const BY_KIND: ReadonlyMap<Shows["kind"], Meter> = new Map(METERS.map((meter) => [meter.shows, meter]));

/** The display of that kind; `undefined` for kinds that give no results. */
export function findMeter(shows: Shows["kind"]): Meter | undefined {
  return BY_KIND.get(shows);
}
