// Computes a ladder: the power by which flow goes with depression at one lift, and whether one power is enough.
import type { Kink, LadderPoint, LadderResult, LadderVerdict, PowerLaw } from "../../model/ladder-result.ts";
import type { Ladder } from "../../model/model.ts";
import type { Setup } from "../../model/setup.ts";
import { columnValues } from "../column-values.ts";
import { ComputedRows } from "../computed-rows.ts";
import { studentQuantile } from "../student.ts";
import { testFlux } from "../test-flux.ts";
import { bentLine, type LinePoint, straightLine } from "./line-fit.ts";

const NORMAL_TWO_SIDED_95 = 1.959963984540054;
/** A kink is one where chance makes it in fewer than 5 % of straight ladders. */
const FALSE_ALARMS = 0.05;

/**
 * The result of a ladder in the set-up of its run, on a bench whose single readings scatter by `repeat` (relative). The
 * exponent is the slope of the logarithms by weighted least squares. It is as expected from that of an ideal nozzle over the same
 * depressions (air thins out as it speeds up; Heywood (1988), C.8) up to 0.5, the square root law of a constant density.
 */
export function evaluateLadder(ladder: Ladder, setup: Setup, repeat: number): LadderResult {
  const points = pointsOf(ladder, setup, repeat);
  const logs = points.map(({ depression, flow, uncertainty }) => ({
    x: Math.log(depression),
    y: Math.log(flow),
    u: uncertainty,
  }));
  const line = straightLine(logs);
  const law: PowerLaw | undefined = line && {
    exponent: line.slope,
    error: line.error,
    level: line.level,
    middle: Math.exp(line.middle),
  };
  const ideal = logs.map(({ x, u }) => ({ x, y: Math.log(nozzleFlow(setup, Math.exp(x))), u }));
  const nozzle = straightLine(ideal)?.slope;
  const limit = line?.widened ? studentQuantile(0.975, logs.length - 2) : NORMAL_TWO_SIDED_95;
  const allowance = (limit ?? NORMAL_TWO_SIDED_95) * (law?.error ?? 0);
  const kink = kinkOf(logs, ideal);
  const verdict = law && verdictOf(law.exponent, nozzle ?? 0.5, allowance, kink);
  return { ladder, setup, points, law, nozzle, allowance, kink, verdict };
}

function pointsOf({ table }: Ladder, setup: Setup, repeat: number): readonly LadderPoint[] {
  if (table === undefined) return [];
  const duty = columnValues(table, "duty");
  const { results } = new ComputedRows({ ...setup, run: { ...setup.run, table } });
  return results.flatMap((result): LadderPoint[] => {
    const { row, depression, flow, variance } = result;
    if (row.void !== undefined || depression === undefined || flow === undefined || !(flow.port > 0))
      return [];
    return [
      {
        row,
        depression,
        flow: flow.port,
        uncertainty: Math.sqrt(repeat ** 2 + variance),
        duty: duty?.value(row),
      },
    ];
  });
}

/** Volume of entering air that an ideal nozzle of 1 m2 passes, m3/s. */
function nozzleFlow({ direction, air }: Setup, depression: number): number {
  return (testFlux(direction.value, air.value, depression) ?? Number.NaN) / air.value.density;
}

/** A kink that is there whether or not the thinning of an ideal nozzle is taken out first. */
function kinkOf(logs: readonly LinePoint[], ideal: readonly LinePoint[]): Kink | undefined {
  const bent = bentLine(logs);
  const withoutThinning = bentLine(
    logs.map((point, at) => ({ ...point, y: point.y - (ideal[at]?.y ?? 0) + point.x / 2 })),
  );
  if (bent === undefined || withoutThinning === undefined) return undefined;
  const chance = Math.max(bent.chance, withoutThinning.chance);
  if (!(chance < FALSE_ALARMS)) return undefined;
  const { x, level, below, above } = bent;
  return { depression: Math.exp(x), level, below, above, chance };
}

function verdictOf(
  exponent: number,
  nozzle: number,
  allowance: number,
  kink: Kink | undefined,
): LadderVerdict {
  if (kink !== undefined) return "kinked";
  if (exponent > 0.5 + allowance) return "steep";
  return exponent < Math.min(nozzle, 0.5) - allowance ? "flat" : "as-expected";
}
