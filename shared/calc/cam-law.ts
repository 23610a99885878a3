// What a port is worth to an engine depends on how long the cam keeps the valve at each lift.

/** The rise laws a cam can be given by. */
export const camLaws = ["harmonic", "cycloidal", "p345", "p4567"] as const;

/** One of the rise laws. */
export type CamLaw = (typeof camLaws)[number];

/** A moment of a valve event: crank or cam `angle` (any unit: only shares of the event count), `lift` in m. */
export interface EventPoint {
  readonly angle: number;
  readonly lift: number;
}

/** A quantity measured at a station: `lift` in m, `value` in any unit. */
export interface CurvePoint {
  readonly lift: number;
  readonly value: number;
}

const eventIntervals = 2000;

const roundingAllowance = 1 + 1e-9;

/** Whether one lift is as high as another; lifts are converted from different numbers, so that one a little lower is. */
export function reaches(lift: number, other: number): boolean {
  return other <= lift * roundingAllowance;
}

function unboundedRise(law: CamLaw, x: number): number {
  switch (law) {
    case "harmonic":
      return (1 - Math.cos(Math.PI * x)) / 2;
    case "cycloidal":
      return x - Math.sin(2 * Math.PI * x) / (2 * Math.PI);
    case "p345":
      return x ** 3 * (10 + x * (-15 + x * 6));
    case "p4567":
      return x ** 4 * (35 + x * (-84 + x * (70 - x * 20)));
  }
}

/**
 * Share of the full rise, 0 to 1, at a share `x` of the angle from shut to full lift; an `x` outside 0 to 1
 * counts as the nearer end.
 * Source: R. L. Norton, Cam Design and Manufacturing Handbook: simple harmonic, cycloidal, 3-4-5 and 4-5-6-7
 * polynomial displacement.
 */
export function riseLaw(law: CamLaw, x: number): number {
  const rise = unboundedRise(law, Math.min(1, Math.max(0, x)));
  // Close to its ends rounding takes a law a little beyond them: more lift than there is, or less than none.
  return Math.min(1, Math.max(0, rise));
}

/**
 * Lift, in the unit of `peak`, at a share `x` of a symmetric event from opening (0) over full lift (0.5) to
 * shutting (1).
 */
export function valveLift(law: CamLaw, peak: number, x: number): number {
  return peak * riseLaw(law, 1 - Math.abs(2 * x - 1));
}

/** A symmetric event of this law and peak lift, finely sampled over angles from 0 to 1. */
export function sampleEvent(law: CamLaw, peak: number): readonly EventPoint[] {
  return Array.from({ length: eventIntervals + 1 }, (_, step) => {
    const angle = step / eventIntervals;
    return { angle, lift: valveLift(law, peak, angle) };
  });
}

/** Value at a lift on straight lines between the points; that of the last one beyond it. */
function valueAt(curve: readonly CurvePoint[], lift: number): number {
  let lower: CurvePoint = { lift: 0, value: 0 };
  for (const upper of curve) {
    if (lift < upper.lift) {
      const share = (lift - lower.lift) / (upper.lift - lower.lift);
      return lower.value + share * (upper.value - lower.value);
    }
    lower = upper;
  }
  return lower.value;
}

/** Mean of the curve over a lift that changes evenly from one value to the other. */
function meanBetween(curve: readonly CurvePoint[], from: number, to: number): number {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  let lift = low;
  let value = valueAt(curve, low);
  let area = 0;
  for (const point of curve) {
    if (point.lift <= low || point.lift >= high) continue;
    area += ((point.lift - lift) * (value + point.value)) / 2;
    ({ lift, value } = point);
  }
  const last = valueAt(curve, high);
  if (lift === low) return (value + last) / 2;
  area += ((high - lift) * (value + last)) / 2;
  return area / (high - low);
}

function isRising(values: readonly number[]): boolean {
  return values.every((value, index) => index === 0 || value > (values[index - 1] ?? Infinity));
}

/**
 * Mean over a valve event of a quantity known by lift, each lift weighted with the angle the valve spends there.
 *
 * The event is a table of lift on angle with straight lines between its points; only the part off the seat
 * counts, so a cam lift times rocker ratio less lash may be given as it is, below zero where the lash is not
 * taken up. The curve is 0 at lift 0 and straight between stations, which stand in rising order; stations at or
 * below lift 0 are not used. The integral of these lines is exact.
 *
 * `undefined` when the event lifts beyond the last station, when the angles or the stations do not rise, and
 * when the valve never opens.
 *
 * Source: C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 1, chapter 6 (mean inlet
 * flow coefficient).
 */
export function eventMean(event: readonly EventPoint[], curve: readonly CurvePoint[]): number | undefined {
  const stations = curve.filter((point) => point.lift > 0);
  const last = stations.at(-1)?.lift ?? 0;
  if (!isRising(stations.map((point) => point.lift)) || !isRising(event.map((point) => point.angle))) {
    return undefined;
  }
  let open = 0;
  let sum = 0;
  let before: EventPoint | undefined;
  for (const point of event) {
    if (!reaches(last, point.lift)) return undefined;
    if (before !== undefined && Math.max(before.lift, point.lift) > 0) {
      const from = Math.max(0, before.lift);
      const to = Math.max(0, point.lift);
      const offSeat = before.lift === point.lift ? 1 : (to - from) / (point.lift - before.lift);
      const angle = (point.angle - before.angle) * offSeat;
      open += angle;
      sum += angle * meanBetween(stations, from, to);
    }
    before = point;
  }
  return open > 0 ? sum / open : undefined;
}

/** Share of the time that a valve is open which it spends below a lift; 0 when it never opens. */
export function shareBelow(event: readonly EventPoint[], lift: number): number {
  const shut = angleBelow(event, 0);
  const open = angleBelow(event, Number.POSITIVE_INFINITY) - shut;
  return open > 0 ? (angleBelow(event, lift) - shut) / open : 0;
}

function angleBelow(event: readonly EventPoint[], lift: number): number {
  let sum = 0;
  for (const [index, after] of event.entries()) {
    const before = event[index - 1];
    if (before === undefined) continue;
    const low = Math.min(before.lift, after.lift);
    const high = Math.max(before.lift, after.lift);
    const share = high <= lift ? 1 : low >= lift ? 0 : (lift - low) / (high - low);
    sum += share * (after.angle - before.angle);
  }
  return sum;
}
