// How a velocity map is laid out: the section in one scale for both axes, and the speeds beside it where there is room.
import type { MapPoint } from "../calc/velocity-map.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import type { Plot } from "./chart-plot.ts";
import { chartScale } from "./chart-scale.ts";
import { PADDING } from "./chart-shell.ts";

export const MAP_LEFT = 52;
const RIGHT = 20;
/** Of the section, over the width of the picture; and in pixels at least and at most. */
const HIGHEST_SHARE = 0.6;
const [LEAST_HIGHEST, MOST_HIGHEST] = [520, 800];
const TICKS = 5;
/** Beyond its outermost places the section goes on for this share of what they span. */
const RIM = 0.12;
/** Below the lowest place there is room for its disc and its number, in pixels. */
export const UNDER = 36;
/** Between the section and the speeds beside it, in pixels. */
export const PROFILE_GAP = 36;
/** The speeds have at least this share of the room, and at least so many pixels; else they are left out. */
const PROFILE_SHARE = 0.3;
const LEAST_PROFILE = 150;

export interface MapFrame {
  readonly section: Plot;
  /** Width of the speeds beside the section; missing where there is no room for them. */
  readonly profile?: number;
}

export function mapFrame(points: readonly MapPoint[], place: Unit, outer: number): MapFrame {
  const [left, right] = span(points.map(({ x }) => fromSI(x, place)));
  const [bottom, top] = span(points.map(({ y }) => fromSI(y, place)));
  const rim = RIM * Math.max(right - left, top - bottom) || 1;
  const [wide, high] = [right - left + 2 * rim, top - bottom + 2 * rim];
  const room = outer - 2 * PADDING - MAP_LEFT - RIGHT;
  const least = Math.max(LEAST_PROFILE, room * PROFILE_SHARE) + PROFILE_GAP;
  const highest = Math.min(MOST_HIGHEST, Math.max(LEAST_HIGHEST, outer * HIGHEST_SHARE));
  /** Where the section is as high as it may be, the speeds take what is left. */
  const hasProfile = room - least >= LEAST_PROFILE;
  const pixels = hasProfile
    ? Math.min((room - least) / wide, highest / high)
    : Math.min(room / wide, highest / high);
  const width = Math.max(1, Math.round(wide * pixels));
  const under = Math.max(0, UNDER / pixels - rim);
  return {
    section: {
      x: chartScale([left - rim, right + rim], Math.min(TICKS, width / 60), false),
      y: chartScale([bottom - rim - under, top + rim], TICKS, false),
      width,
      height: Math.max(1, Math.round((high + under) * pixels)),
    },
    ...(hasProfile && { profile: Math.round(room - width - PROFILE_GAP) }),
  };
}

function span(values: readonly number[]): readonly [low: number, high: number] {
  const low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  const high = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  return [low, high];
}
