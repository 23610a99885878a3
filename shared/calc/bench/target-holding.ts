// How closely a bench holds the depression that it is asked for.
import { quantileOf } from "../median.ts";
import type { BenchReading } from "./bench-visits.ts";

/** Pa. */
export interface TargetHolding {
  readonly readings: number;
  /** What 95 % of the readings are off their target by, at most. */
  readonly off: number;
  /** The target that most readings were taken at, and the size of its column's last digit. */
  readonly target: number;
  readonly step: number;
}

const SHARE = 0.95;

/** Readings of the usual target; `steps` gives the written digit of a reading's depression. `undefined` of none. */
export function targetHolding(
  readings: readonly BenchReading[],
  steps: (reading: BenchReading) => number,
): TargetHolding | undefined {
  const byTarget = new Map<number, BenchReading[]>();
  for (const reading of readings) {
    if (reading.result.depression === undefined) continue;
    const target = reading.run.setup.target.value.value;
    const group = byTarget.get(target);
    if (group === undefined) byTarget.set(target, [reading]);
    else group.push(reading);
  }
  const usual = [...byTarget].reduce<readonly [number, readonly BenchReading[]] | undefined>(
    (most, entry) => (most === undefined || entry[1].length > most[1].length ? entry : most),
    undefined,
  );
  if (usual === undefined) return undefined;
  const [target, taken] = usual;
  const off = quantileOf(
    taken.map(({ result }) => Math.abs((result.depression ?? target) - target)),
    SHARE,
  );
  const step = taken.reduce((most, reading) => Math.max(most, steps(reading)), 0);
  return off === undefined ? undefined : { readings: taken.length, off, target, step };
}
