// Chooses the ends and the ticks of an axis, and says where on it a value stands.
import { formatFixed } from "../quantity/digits.ts";

/** A linear axis over `size` pixels; `low` < `high`, every tick between them. */
export interface ChartScale {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  /** Decimals that tell the ticks apart. */
  readonly decimals: number;
}

const MOST_DECIMALS = 6;
/** Values that differ by less, relative to their size, are one value to the eye; smaller ones are zero. */
const LEAST_SPAN = 1e-6;
const LEAST_SIZE = 1e-12;
/** Steps of an axis within a power of ten, and up to where each is the nearest (on a ratio scale). */
const STEPS = [
  { step: 1, upTo: Math.SQRT2 },
  { step: 2, upTo: Math.sqrt(10) },
  { step: 5, upTo: Math.sqrt(50) },
];

/**
 * A scale over the values whose ticks are whole multiples of 1, 2 or 5 times a power of ten, about `count` of them;
 * `round` moves the ends out to ticks. Values that are not finite do not count; without any the scale runs from 0 to 1.
 */
export function chartScale(values: readonly number[], count: number, round: boolean): ChartScale {
  const finite = values.filter(Number.isFinite);
  let low = finite.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  let high = finite.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  if (!(low <= high)) return chartScale([0, 1], count, round);
  const size = Math.max(Math.abs(low), Math.abs(high));
  if (high - low <= Math.max(LEAST_SPAN * size, LEAST_SIZE)) {
    const room = size > LEAST_SIZE ? size * 0.1 : 1;
    low -= room;
    high += room;
  }
  const step = niceStep((high - low) / Math.max(1, count));
  if (!(step > 0 && Number.isFinite(step))) return { low, high, ticks: [low, high], decimals: 0 };
  const first = round ? Math.floor(low / step + 1e-9) : Math.ceil(low / step - 1e-9);
  const last = round ? Math.ceil(high / step - 1e-9) : Math.floor(high / step + 1e-9);
  const ticks: number[] = [];
  for (let i = first; i <= last; i++) ticks.push(Number((i * step).toPrecision(12)));
  return {
    low: round ? Math.min(low, ticks[0] ?? low) : low,
    high: round ? Math.max(high, ticks.at(-1) ?? high) : high,
    ticks,
    decimals: decimalsOf(step),
  };
}

/** Pixels from the low end; beyond the ends too. */
export function toPixels(scale: ChartScale, size: number, value: number): number {
  return ((value - scale.low) / (scale.high - scale.low)) * size;
}

/** The inverse of `toPixels`. */
export function fromPixels(scale: ChartScale, size: number, pixels: number): number {
  return scale.low + (pixels / size) * (scale.high - scale.low);
}

/** The value, or the end of the scale that it lies beyond. */
export function clamped({ low, high }: ChartScale, value: number): number {
  return Math.min(Math.max(value, low), high);
}

/** d3 number format of the ticks; far beyond any bench with an exponent. */
export function tickFormat(scale: ChartScale): string {
  return needsExponent(scale) ? ".1e" : `.${scale.decimals}f`;
}

/** A tick as it is printed. */
export function tickText(scale: ChartScale, tick: number): string {
  return needsExponent(scale) ? tick.toExponential(1) : formatFixed(tick, scale.decimals);
}

function needsExponent({ low, high }: ChartScale): boolean {
  return Math.max(Math.abs(low), Math.abs(high)) >= 1e7;
}

function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  return (STEPS.find(({ upTo }) => rough / power <= upTo)?.step ?? 10) * power;
}

function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals++) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6 * scaled) return decimals;
  }
  return MOST_DECIMALS;
}
