// The section of a velocity map: a disc at each place of the probe, the larger and the deeper the quicker.
import { extent } from "../calc/extent.ts";
import { DEAD_SHARE, type MapPoint, type MapStatistics } from "../calc/velocity-map.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { around } from "./chart-drawing.ts";
import type { DrawnPanel } from "./chart-frame.ts";
import type { Box } from "./chart-labels.ts";
import { type Json, LABEL_SIZE, ring, symbols, texts } from "./chart-layers.ts";
import { markOf } from "./chart-mark.ts";
import { labelRows, labelWish, type Plot, px, py } from "./chart-plot.ts";
import { fromPixels } from "./chart-scale.ts";
import { textWidth } from "./chart-text.ts";
import type { ChartTheme } from "./chart-theme.ts";
import { hexColour, mixed, parseColour } from "./colour.ts";
import { tidy } from "./map-facts.ts";
import { MAP_LEFT } from "./map-frame.ts";
import type { MapUnits } from "./map-units.ts";

/** How much of the colour the slowest place has. */
const PALEST = 0.15;
/** Disc of the quickest place, in square pixels at most; smaller where places stand close. */
const LARGEST_DISC = 900;
/** From a disc to its number. */
const GAP = 3;

/** A place of the probe as it is drawn. */
export interface DrawnPlace {
  readonly point: MapPoint;
  readonly x: number;
  readonly y: number;
  readonly speed: number;
  /** As it is printed, without its unit. */
  readonly number: string;
  readonly fill: string;
  /** Its words, and what leads from it to its line. */
  readonly told: Json;
}

/** `block` is what the places' lines are counted in. */
export function drawnPlaces(
  points: readonly MapPoint[],
  { peak, mean }: MapStatistics,
  { place, speed: unit }: MapUnits,
  theme: ChartTheme,
  block: string,
): readonly DrawnPlace[] {
  const slowest = points.reduce((least, point) => Math.min(least, point.speed), peak.speed);
  const range = peak.speed - slowest || 1;
  const tint = tints(theme);
  return points.map((point) => {
    const [x, y] = [fromSI(point.x, place), fromSI(point.y, place)];
    const speed = fromSI(point.speed, unit);
    const number = formatFixed(speed, 0);
    const about = `x ${tidy(x)}, y ${tidy(y)} ${place.symbol}: ${number} ${unit.symbol}`;
    const isDead = point.speed < DEAD_SHARE * mean;
    const fill = isDead ? theme.background : tint((point.speed - slowest) / range);
    return { point, x, y, speed, number, fill, told: { about, ...markOf(block, point.row.line) } };
  });
}

export function mapSection(
  places: readonly DrawnPlace[],
  peak: MapPoint,
  plot: Plot,
  { place }: MapUnits,
  theme: ChartTheme,
): DrawnPanel {
  const spacing = closest(places.map(({ x, y }) => ({ x: px(plot, x), y: py(plot, y) })));
  const largest = Math.min(LARGEST_DISC, (Math.PI / 4) * (0.7 * spacing) ** 2);
  const [, widest] = extent(places.map(({ number }) => textWidth(number, LABEL_SIZE)));
  const hasRoom = spacing >= Math.max(widest + GAP, 2 * (Math.sqrt(largest / Math.PI) + GAP) + LABEL_SIZE);
  const sizeOf = ({ point }: DrawnPlace) => (largest * Math.max(0, point.speed)) / peak.speed;
  const color = theme.series[0];
  const discs = places.map((each): Json => {
    const { x, y, fill, told } = each;
    return { x, y, shape: "circle", size: sizeOf(each), color, fill, width: 1.2, ...told };
  });
  const labels = hasRoom
    ? places.map((each) => numberUnder(each, sizeOf(each), plot, theme))
    : peakLabel(places, peak, sizeOf, plot, theme);
  return {
    panel: {
      ...plot,
      title: `y, ${place.symbol}`,
      indent: MAP_LEFT,
      isPlane: true,
      layers: [symbols("places", "all"), ring("places", theme), texts("speeds")],
    },
    data: { places: discs, speeds: labels },
  };
}

function numberUnder({ x, y, number }: DrawnPlace, size: number, plot: Plot, theme: ChartTheme): Json {
  const left = px(plot, x) - textWidth(number, LABEL_SIZE) / 2;
  const below = py(plot, y) + Math.sqrt(size / Math.PI) + GAP + LABEL_SIZE / 2;
  return {
    x: fromPixels(plot.x, plot.width, left),
    y: fromPixels(plot.y, plot.height, plot.height - below),
    text: number,
    color: theme.text,
  };
}

/** The quickest place's number, if there is room beside it that no disc takes. */
function peakLabel(
  places: readonly DrawnPlace[],
  peak: MapPoint,
  sizeOf: (place: DrawnPlace) => number,
  plot: Plot,
  theme: ChartTheme,
): readonly Json[] {
  const discs = places.map((each): Box => {
    const radius = Math.sqrt(sizeOf(each) / Math.PI) + 1;
    const [left, top] = [px(plot, each.x) - radius, py(plot, each.y) - radius];
    return { left, top, width: 2 * radius, height: 2 * radius };
  });
  const wishes = places
    .filter(({ point }) => point === peak)
    .map((each) => {
      const radius = Math.sqrt(sizeOf(each) / Math.PI) + GAP;
      return labelWish([each.number], theme.text, (width) =>
        around(px(plot, each.x), py(plot, each.y), width, [radius, radius + 12, radius + 24]),
      );
    });
  return labelRows(plot, wishes, [], discs);
}

/** From pale at 0 to the first colour of the theme at 1. */
function tints({ series: [deep], background }: ChartTheme): (share: number) => string {
  const ground = parseColour(background, [255, 255, 255]);
  const colour = ground && parseColour(deep, ground);
  if (ground === undefined || colour === undefined) return () => deep;
  return (share) => hexColour(mixed(ground, colour, PALEST + (1 - PALEST) * share));
}

/** The least distance of any place from its nearest neighbour; generous for a lone place. Of many places a sample counts. */
function closest(places: readonly { readonly x: number; readonly y: number }[]): number {
  let least = 80;
  const few = places.slice(0, 500);
  few.forEach((a, at) => {
    for (const b of few.slice(at + 1)) {
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      if (distance > 0) least = Math.min(least, distance);
    }
  });
  return least;
}
