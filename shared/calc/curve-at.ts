// A curve at any lift inside its stations, and how well it is known there.
import type { Repeatability, Station } from "../model/result.ts";
import { isSameLift } from "./gain.ts";
import { widening } from "./repeatability.ts";

/** A curve at one lift. */
export interface CurveAt {
  /** m3/s */
  readonly flow: number;
  /** One standard deviation of the flow from repeatability, relative; widened by t/z where that is pooled. */
  readonly spread: number;
  /** Whether the lift was read; else it lies between two stations. */
  readonly isRead: boolean;
  /** What the flow is made of: stations, and the share of the flow that each gives. */
  readonly parts: readonly { readonly station: Station; readonly share: number }[];
  /** Standard uncertainty of the straight line between two stations, relative; 0 at a station. */
  readonly bend: number;
}

/** Standard uncertainties of a flow, relative, without the bench's scale. */
export interface CurveUncertainty {
  /** From what each lift has of its own: repeatability, the set lift, the line between stations. */
  readonly own: number;
  /** From written numbers and air, which all lifts of a run share in good part. */
  readonly shared: number;
}

/**
 * The curve at a lift: a station's mean, or the straight line between two. `undefined` beyond the first and last station.
 * Between stations the line is off by what the curve bends there: at most |f''|/2 (x - a)(b - x) for a second derivative
 * f'' (remainder of linear interpolation; Abramowitz and Stegun 25.2.1), taken from the stations around; its standard
 * uncertainty is that bound over the root of 3 (JCGM 100:2008, 4.3.7).
 */
export function curveAt(
  stations: readonly Station[],
  lift: number,
  repeatability: Repeatability,
): CurveAt | undefined {
  const at = firstFrom(stations, lift);
  const above = stations[at];
  const below = stations[at - 1];
  const deviation = repeatability.deviation * widening(repeatability);
  for (const station of [above, below]) {
    if (station === undefined || !isSameLift(station.lift, lift)) continue;
    const spread = deviation / Math.sqrt(station.rows.length);
    return { flow: station.flow, spread, isRead: true, parts: [{ station, share: 1 }], bend: 0 };
  }
  if (above === undefined || below === undefined) return undefined;
  const way = (lift - below.lift) / (above.lift - below.lift);
  const flow = below.flow + way * (above.flow - below.flow);
  if (!(flow > 0)) return undefined;
  const parts = [
    { station: below, share: ((1 - way) * below.flow) / flow },
    { station: above, share: (way * above.flow) / flow },
  ];
  const bend = (bendAt(stations, at) * (lift - below.lift) * (above.lift - lift)) / (2 * Math.sqrt(3) * flow);
  const read = parts.map(({ station, share }) => (share * deviation) / Math.sqrt(station.rows.length));
  return { flow, spread: Math.hypot(...read, bend), isRead: false, parts, bend };
}

/** How uncertain a flow is; `scale` is the standard uncertainty of the bench's flow scale, relative, and no part of it. */
export function curveUncertainty({ parts, bend }: CurveAt, scale: number): CurveUncertainty {
  const known = parts.map(({ station: { rows, uncertainty }, share }) => {
    const variance = rows.reduce((sum, row) => sum + row.variance, 0) / Math.max(1, rows.length);
    const own = Math.max(0, (uncertainty / 2) ** 2 - variance - scale ** 2);
    return { own: share * Math.sqrt(own), shared: share * Math.sqrt(variance) };
  });
  return {
    own: Math.hypot(...known.map(({ own }) => own), bend),
    shared: known.reduce((sum, { shared }) => sum + shared, 0),
  };
}

/** Index of the first station that is not below a lift. */
export function firstFrom(stations: readonly Station[], lift: number): number {
  let low = 0;
  let high = stations.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((stations[middle]?.lift ?? 0) < lift) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The larger second derivative of the two parabolas through the stations around the gap below a station; 0 where there is
 * none.
 */
export function bendAt(stations: readonly Station[], at: number): number {
  const parabolas = [at - 2, at - 1].flatMap((from) => {
    const [p, q, r] = [stations[from], stations[from + 1], stations[from + 2]];
    if (p === undefined || q === undefined || r === undefined) return [];
    const first = (q.flow - p.flow) / (q.lift - p.lift);
    const second = (r.flow - q.flow) / (r.lift - q.lift);
    return [Math.abs((2 * (second - first)) / (r.lift - p.lift))];
  });
  return Math.max(0, ...parabolas);
}
