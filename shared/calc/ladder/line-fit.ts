// A straight line, and one with a kink, through points that are not equally certain.
import { normalCdf } from "../normal.ts";
import { studentTail } from "../student.ts";

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /** Standard uncertainty of y. */
  readonly u: number;
}

export interface Line {
  readonly slope: number;
  /** Standard error of the slope: from the points' uncertainties, widened where the points scatter by more. */
  readonly error: number;
  /** y at the weighted mean of x. */
  readonly level: number;
  readonly middle: number;
  /** Whether the error was widened. */
  readonly widened: boolean;
}

export interface BentLine {
  /** x of the kink, and y there. */
  readonly x: number;
  readonly level: number;
  readonly below: number;
  readonly above: number;
  /** Chance that a straight line with such scatter looks as bent as this anywhere; at most. */
  readonly chance: number;
}

/**
 * The line of least weighted squares. Where the points scatter by more than their uncertainties say, the slope's error grows
 * in proportion (R. T. Birge, Phys. Rev. 40 (1932) 207-227). `undefined` with fewer than three points or a single x.
 */
export function straightLine(points: readonly LinePoint[]): Line | undefined {
  const sums = weightedSums(points);
  if (points.length < 3 || !(sums.xx > 0)) return undefined;
  const slope = sums.xy / sums.xx;
  const left = points.reduce((sum, { x, y, u }) => sum + ((y - sums.y - slope * (x - sums.x)) / u) ** 2, 0);
  const birge = Math.sqrt(left / (points.length - 2));
  return {
    slope,
    error: Math.max(1, birge) / Math.sqrt(sums.xx),
    level: sums.y,
    middle: sums.x,
    widened: birge > 1,
  };
}

/** Two points on each side of a kink at least, and one more to say how much they scatter. */
const LEAST_POINTS = 6;
/** Each place costs a fit of all points; no ladder has as many. */
const MOST_PLACES = 200;

/**
 * Two lines that meet at one of the points: of the places with two points on each side the one that leaves least. The change
 * of slope is judged by the points' uncertainties; where they scatter by more than these say, by Student's t with n - 3 degrees of freedom
 * (whose square is the F of the two models). Its chance is multiplied by the number of places looked at (Bonferroni).
 * `undefined` with fewer than six points.
 */
export function bentLine(points: readonly LinePoint[]): BentLine | undefined {
  const sorted = [...points].sort((a, b) => a.x - b.x);
  const degrees = sorted.length - 3;
  if (sorted.length < LEAST_POINTS) return undefined;
  const places = kinkPlaces(sorted.map(({ x }) => x));
  let best: (BentLine & { readonly explained: number }) | undefined;
  for (const place of places) {
    const beyond = sorted.map(({ x }) => Math.max(0, x - place));
    // What a straight line does not explain, of both (Frisch, Waugh and Lovell).
    const left = residuals(sorted);
    const own = residuals(sorted.map((point, at) => ({ ...point, y: beyond[at] ?? 0 })));
    const along = weighted(sorted, (at) => (left[at] ?? 0) * (own[at] ?? 0));
    const length = weighted(sorted, (at) => (own[at] ?? 0) ** 2);
    const total = weighted(sorted, (at) => (left[at] ?? 0) ** 2);
    if (!(length > 0)) continue;
    const bend = along / length;
    if (best !== undefined && bend * along <= best.explained) continue;
    // In units of the points' uncertainties: a ladder does not scatter by less than these say.
    const variance = (total - bend * along) / degrees;
    const t = Math.abs(bend) * Math.sqrt(length / Math.max(1, variance));
    const chance = 2 * (variance > 1 ? studentTail(t, degrees) : normalCdf(-t));
    const straight = weightedSums(
      sorted.map((point, at) => ({ ...point, y: point.y - bend * (beyond[at] ?? 0) })),
    );
    const below = straight.xy / straight.xx;
    best = {
      x: place,
      level: straight.y + below * (place - straight.x),
      below,
      above: below + bend,
      chance: Math.min(1, places.length * chance),
      explained: bend * along,
    };
  }
  if (best === undefined) return undefined;
  const { explained: _, ...line } = best;
  return line;
}

/** Where two points stand on each side; `xs` rise. Of very many places some, evenly over them. */
function kinkPlaces(xs: readonly number[]): readonly number[] {
  const [second = Number.NaN, lastButOne = Number.NaN] = [xs[1], xs.at(-2)];
  const places = [...new Set(xs)].filter((x) => x > second && x < lastButOne);
  const step = Math.ceil(places.length / MOST_PLACES);
  return places.filter((_, at) => at % step === 0);
}

function weightedSums(points: readonly LinePoint[]) {
  const weight = points.reduce((sum, { u }) => sum + 1 / u ** 2, 0);
  const x = points.reduce((sum, point) => sum + point.x / point.u ** 2, 0) / weight;
  const y = points.reduce((sum, point) => sum + point.y / point.u ** 2, 0) / weight;
  const xx = points.reduce((sum, point) => sum + ((point.x - x) / point.u) ** 2, 0);
  const xy = points.reduce((sum, point) => sum + ((point.x - x) * (point.y - y)) / point.u ** 2, 0);
  return { x, y, xx, xy };
}

function residuals(points: readonly LinePoint[]): readonly number[] {
  const { x, y, xx, xy } = weightedSums(points);
  return points.map((point) => point.y - y - (xy / xx) * (point.x - x));
}

function weighted(points: readonly LinePoint[], value: (at: number) => number): number {
  return points.reduce((sum, { u }, at) => sum + value(at) / u ** 2, 0);
}
