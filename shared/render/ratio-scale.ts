// An axis of ratios: over logarithms to base ten, with ticks at round numbers.
import type { Json } from "./chart-layers.ts";
import { type ChartScale, chartScale } from "./chart-scale.ts";

/** Numbers that an axis over several powers of ten may carry within one, from few to many. */
const DECADES = [[1], [1, 3], [1, 2, 5], [1, 2, 3, 4, 6, 8]];
/** Room beyond the values, over what they span. */
const ROOM = 0.06;
const LEAST_ROOM = 0.02;

/** A scale over the logarithms from `low` to `high` and a little beyond, with about `count` ticks. */
export function ratioScale(low: number, high: number, count: number): ChartScale {
  const room = Math.max(LEAST_ROOM, (high - low) * ROOM);
  const [from, to] = [low - room, high + room];
  const ticks = to - from < 1 ? evenTicks(from, to, count) : decadeTicks(from, to, count);
  return { low: from, high: to, ticks, decimals: 6 };
}

/** Within a power of ten: numbers at even distances. */
function evenTicks(from: number, to: number, count: number): readonly number[] {
  return chartScale([10 ** from, 10 ** to], Math.max(2, count), false).ticks.map(Math.log10);
}

function decadeTicks(from: number, to: number, count: number): readonly number[] {
  const ticksOf = (steps: readonly number[]): readonly number[] => {
    const ticks: number[] = [];
    for (let power = Math.floor(from); power <= Math.ceil(to); power++) {
      ticks.push(...steps.map((step) => power + Math.log10(step)));
    }
    return ticks.filter((tick) => tick >= from && tick <= to);
  };
  const all = DECADES.map(ticksOf);
  return all.findLast((ticks) => ticks.length <= Math.max(2, count)) ?? all[0] ?? [];
}

/** The panel with ticks on the channels that say the number and not its logarithm. */
export function withRatios(spec: Json, channels: readonly ("x" | "y")[]): Json {
  const encoding = spec["encoding"] as Record<string, { readonly axis: Json }>;
  const changed = Object.fromEntries(
    channels.map((channel) => {
      const { format: _, ...axis } = encoding[channel]?.axis ?? {};
      return [
        channel,
        { ...encoding[channel], axis: { ...axis, labelExpr: "format(pow(10, datum.value), '.3~r')" } },
      ];
    }),
  );
  return { ...spec, encoding: { ...encoding, ...changed } };
}
