// What the check plates say of a bench over time: its level, its limits, and whether it drifts.
import { epochOf } from "../calendar.ts";
import { straightLine } from "../straight-line.ts";
import { studentQuantile } from "../student.ts";
import type { BenchVisits } from "./bench-visits.ts";
import { type ControlLimits, controlLimits } from "./control-limits.ts";

/** One check of one plate; shares of the certified flow. */
export interface PlatePoint {
  readonly file: string;
  readonly date: string | undefined;
  /** Milliseconds since 1970 UTC. */
  readonly epoch: number | undefined;
  readonly readings: number;
  readonly difference: number;
  readonly uncertainty: number | undefined;
  readonly en: number | undefined;
  /** Outside the control limits. */
  readonly isOut: boolean;
}

/** Change of the difference a year, with the half-width of its 95 % confidence interval (Student). */
export interface Drift {
  readonly perYear: number;
  readonly halfWidth: number;
  readonly isResolved: boolean;
}

export interface PlateHistory {
  readonly plate: string;
  /** By date. */
  readonly points: readonly PlatePoint[];
  /** Missing with fewer than two checks. */
  readonly limits?: ControlLimits;
  /** Missing with fewer than three dated checks. */
  readonly drift?: Drift;
}

const YEAR = 365.25 * 86_400_000;

/** The history of each plate that was read on the bench and could be compared, by the plate's name. */
export function plateHistories({ visits }: BenchVisits): readonly PlateHistory[] {
  const byPlate = new Map<string, Omit<PlatePoint, "isOut">[]>();
  for (const { file, plates } of visits) {
    for (const { plate, comparison, setup } of plates) {
      if (plate === undefined || comparison === undefined) continue;
      const date = setup.date?.value;
      const { readings, difference, uncertainty, en } = comparison;
      const epoch = date === undefined ? undefined : epochOf(date);
      const points = byPlate.get(plate.id) ?? [];
      points.push({ file, date, epoch, readings, difference, uncertainty, en });
      byPlate.set(plate.id, points);
    }
  }
  return [...byPlate].sort(([a], [b]) => (a < b ? -1 : 1)).map(([plate, points]) => history(plate, points));
}

function history(plate: string, points: readonly Omit<PlatePoint, "isOut">[]): PlateHistory {
  const limits = controlLimits(points.map(({ difference }) => difference));
  const drift = driftOf(points);
  return {
    plate,
    points: points.map((point) => ({
      ...point,
      isOut: limits !== undefined && (point.difference < limits.low || point.difference > limits.high),
    })),
    ...(limits !== undefined && { limits }),
    ...(drift !== undefined && { drift }),
  };
}

function driftOf(points: readonly Omit<PlatePoint, "isOut">[]): Drift | undefined {
  const line = straightLine(
    points.flatMap(({ epoch, difference }) =>
      epoch === undefined ? [] : [{ x: epoch / YEAR, y: difference }],
    ),
  );
  const t = line && studentQuantile(0.975, line.degreesOfFreedom);
  if (line === undefined || t === undefined) return undefined;
  const halfWidth = t * line.slopeUncertainty;
  return { perYear: line.slope, halfWidth, isResolved: Math.abs(line.slope) > halfWidth };
}
