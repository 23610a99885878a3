// Averages the rows of one branch lift by lift, and gives each station its slope and uncertainty.
import type { Branch, RowResult, Station } from "../model/result.ts";

/** What all stations of a run share. */
export interface StationTerms {
  /** One standard deviation of one reading, relative. */
  readonly deviation: number;
  /** Standard uncertainty of a set lift, m. */
  readonly liftSetting: number;
  /** Standard uncertainty of the bench's flow scale, relative. */
  readonly scale: number;
}

interface Group {
  readonly lift: number;
  readonly rows: RowResult[];
  flow: number;
  variance: number;
}

/** The stations of one branch by rising lift; `rows` are those that may be used. Means are arithmetic. */
export function stationsOf(branch: Branch, rows: readonly RowResult[], terms: StationTerms): Station[] {
  const groups = new Map<number, Group>();
  for (const result of rows) {
    const { lift, flow, variance } = result;
    if (result.branch !== branch || lift === undefined || flow === undefined) continue;
    const group = groups.get(lift);
    if (group === undefined) groups.set(lift, { lift, rows: [result], flow: flow.corrected, variance });
    else {
      group.rows.push(result);
      group.flow += flow.corrected;
      group.variance += variance;
    }
  }
  const ordered = [...groups.values()].sort((a, b) => a.lift - b.lift);
  for (const group of ordered) {
    group.flow /= group.rows.length;
    group.variance /= group.rows.length;
  }
  return ordered.map((group, index) => {
    const slope = slopeAt(ordered, index);
    const { lift, flow, rows: averaged, variance } = group;
    const uncertainty = expanded(flow, slope, variance, averaged.length, terms);
    return { lift, flow, rows: averaged, slope, uncertainty };
  });
}

/** Central difference of the means on lift, one-sided at the ends, 0 for a lone station. */
function slopeAt(groups: readonly Group[], index: number): number {
  const below = groups[index - 1] ?? groups[index];
  const above = groups[index + 1] ?? groups[index];
  if (below === undefined || above === undefined || above.lift === below.lift) return 0;
  return (above.flow - below.flow) / (above.lift - below.lift);
}

/**
 * Expanded relative uncertainty (k = 2) of a mean of `count` rows: repeatability, written numbers and air, lift setting
 * on the slope of the curve, and the bench's scale (JCGM 100:2008, 5.1.2; the terms do not depend on each other).
 */
export function expanded(
  flow: number,
  slope: number,
  variance: number,
  count: number,
  { deviation, liftSetting, scale }: StationTerms,
): number {
  const lift = flow === 0 ? 0 : (slope * liftSetting) / flow;
  return 2 * Math.sqrt(deviation ** 2 / count + variance + lift ** 2 + scale ** 2);
}
