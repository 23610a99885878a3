// Draws a velocity map: the section of the port with a disc at each place of the probe, the larger the quicker the air.
import { DEAD_SHARE, type MapPoint, type MapResult } from "../calc/velocity-map.ts";
import type { VelocityMap } from "../model/model.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { captionPanel } from "./chart-caption.ts";
import { type Json, LABEL_SIZE, panelSpec, strongRows, symbols, texts } from "./chart-layers.ts";
import { type ChartScale, chartScale, fromPixels, toPixels } from "./chart-scale.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import { cleanText, textWidth } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { listed } from "./chart-words.ts";
import { hexColour, mixed, parseColour } from "./colour.ts";
import { unit } from "./display-units.ts";

export interface MapChartOptions {
  /** Of the whole picture, in pixels; 760 unless stated. */
  readonly width?: number;
  readonly theme?: ChartTheme;
  /** Units to show instead of the record's own, each for its dimension. */
  readonly units?: readonly Unit[];
}

const LEFT = 52;
const RIGHT = 20;
/** How much of the colour the slowest place has. */
const PALEST = 0.15;
const HIGHEST = 520;
const TICKS = 5;
/** Disc of the quickest place, in square pixels at most; smaller where places stand close. */
const LARGEST_DISC = 900;
/** Beyond its outermost places the section goes on for this share of what they span. */
const RIM = 0.12;
/** From a disc to its number. */
const GAP = 3;

/**
 * The picture of one map, x across and y upwards in one scale. Discs have areas as the speeds and the deeper a colour the
 * quicker they are, with the speed beside them where there is room for all; places below half the mean are hollow. Without a place that has a speed it says so.
 */
export function mapSpec(map: VelocityMap, result: MapResult, options: MapChartOptions = {}): VegaLiteSpec {
  const theme = options.theme ?? LIGHT_THEME;
  const outer = pictureWidth(options.width);
  const title = cleanText(map.title ?? `map of ${map.of?.id ?? "no run"}`);
  const { statistics, points } = result;
  if (statistics === undefined) {
    return emptyChart("No place to draw: no row gives x, y and a speed", title, outer, theme);
  }
  const { place, speed } = unitsOf(map, options.units ?? []);
  const frame = frameOf(points, place, outer);
  const spacing = closest(points.map((point) => ({ x: px(frame, point.x), y: py(frame, point.y) })));
  const largest = Math.min(LARGEST_DISC, (Math.PI / 4) * (0.7 * spacing) ** 2);
  const numbers = points.map((point) => formatFixed(fromSI(point.speed, speed), 0));
  const widest = Math.max(...numbers.map((number) => textWidth(number, LABEL_SIZE)));
  const radius = Math.sqrt(largest / Math.PI);
  const hasRoom = spacing >= Math.max(widest + GAP, 2 * (radius + GAP) + LABEL_SIZE);
  const slowest = points.reduce((least, point) => Math.min(least, point.speed), statistics.peak.speed);
  const range = statistics.peak.speed - slowest || 1;
  const tint = tints(theme);
  const discs: Json[] = [];
  const labels: Json[] = [];
  points.forEach((point, at) => {
    const number = numbers[at] ?? "";
    const [x, y] = [fromSI(point.x, place), fromSI(point.y, place)];
    const size = (largest * Math.max(0, point.speed)) / statistics.peak.speed;
    const color = theme.series[0];
    const fill =
      point.speed < DEAD_SHARE * statistics.mean ? theme.background : tint((point.speed - slowest) / range);
    const about = `x ${tidy(x)}, y ${tidy(y)} ${place.symbol}: ${number} ${speed.symbol}`;
    discs.push({ x, y, shape: "circle", size, color, fill, width: 1.2, about, line: point.row.line });
    if (!hasRoom && point !== statistics.peak) return;
    const left = px(frame, point.x) - textWidth(number, LABEL_SIZE) / 2;
    const below = py(frame, point.y) + Math.sqrt(size / Math.PI) + GAP + LABEL_SIZE / 2;
    labels.push({
      x: fromPixels(frame.x, frame.width, left),
      y: fromPixels(frame.y, frame.height, frame.height - below),
      text: number,
      color: theme.text,
    });
  });
  const notes = notesOf(result, place, speed);
  const caption = captionPanel({ left: LEFT, theme, width: frame.width }, notes, notes, outer - 2 * PADDING);
  return {
    ...shellOf(title, factsOf(map, speed), outer, LEFT, theme),
    datasets: { places: strongRows(discs, theme), speeds: labels, ...caption.data },
    vconcat: [
      panelSpec(
        {
          width: frame.width,
          height: frame.height,
          x: frame.x,
          y: frame.y,
          title: `y, ${place.symbol}`,
          indent: LEFT,
          lift: `x, ${place.symbol}`,
          layers: [symbols("places", "all"), texts("speeds")],
        },
        theme,
      ),
      caption.spec,
    ],
  };
}

/** From pale at 0 to the first colour of the theme at 1. */
function tints({ series: [deep], background }: ChartTheme): (share: number) => string {
  const ground = parseColour(background, [255, 255, 255]);
  const colour = ground && parseColour(deep, ground);
  if (ground === undefined || colour === undefined) return () => deep;
  return (share) => hexColour(mixed(ground, colour, PALEST + (1 - PALEST) * share));
}

interface MapFrame {
  readonly x: ChartScale;
  readonly y: ChartScale;
  readonly width: number;
  readonly height: number;
  readonly place: Unit;
}

/** One scale for both axes: as wide as the picture, or as high as it may be. */
function frameOf(points: readonly MapPoint[], place: Unit, outer: number): MapFrame {
  const span = (values: readonly number[]): readonly [number, number] => {
    const low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
    const high = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
    return [low, high];
  };
  const [left, right] = span(points.map(({ x }) => fromSI(x, place)));
  const [bottom, top] = span(points.map(({ y }) => fromSI(y, place)));
  const rim = RIM * Math.max(right - left, top - bottom) || 1;
  const [wide, high] = [right - left + 2 * rim, top - bottom + 2 * rim];
  const room = outer - 2 * PADDING - LEFT - RIGHT;
  const pixels = Math.min(room / wide, HIGHEST / high);
  return {
    x: chartScale([left - rim, right + rim], TICKS, false),
    y: chartScale([bottom - rim, top + rim], TICKS, false),
    width: Math.max(1, Math.round(wide * pixels)),
    height: Math.max(1, Math.round(high * pixels)),
    place,
  };
}

function px({ x, width, place }: MapFrame, value: number): number {
  return toPixels(x, width, fromSI(value, place));
}

/** Pixels from the top. */
function py({ y, height, place }: MapFrame, value: number): number {
  return height - toPixels(y, height, fromSI(value, place));
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

function unitsOf(
  { table }: VelocityMap,
  wanted: readonly Unit[],
): { readonly place: Unit; readonly speed: Unit } {
  const column = (name: string) => table?.columns.find((entry) => entry.name === name)?.unit;
  const asked = (dimension: "length" | "speed") =>
    wanted.findLast(({ dimensions }) => dimensions.includes(dimension));
  const place = asked("length") ?? column("x") ?? unit("mm");
  const isInches = ["in", "thou", "ft"].includes(place.symbol);
  return { place, speed: asked("speed") ?? column("velocity") ?? unit(isInches ? "ft/s" : "m/s") };
}

function factsOf({ of, lift, depression }: VelocityMap, speed: Unit): string {
  return listed([
    of && `run ${of.id}`,
    lift && `lift ${lift.text} ${lift.unit.symbol}`,
    depression && `at ${depression.text} ${depression.unit.symbol}`,
    `speeds in ${speed.symbol}`,
  ]);
}

/** What the speeds come to, and how to read the discs. */
function notesOf({ points, statistics }: MapResult, place: Unit, speed: Unit): string {
  if (statistics === undefined) return "";
  const { mean, peak, uniformity, dead } = statistics;
  const shown = (value: number) => `${formatFixed(fromSI(value, speed), 0)} ${speed.symbol}`;
  const slow = Math.round(dead * points.length);
  return listed([
    `mean ${shown(mean)}`,
    `peak ${shown(peak.speed)} at x ${tidy(fromSI(peak.x, place))}, y ${tidy(fromSI(peak.y, place))} ${place.symbol}`,
    `uniformity ${formatFixed(uniformity, 3)}, 1 where all places are alike`,
    slow > 0
      ? `hollow: below half the mean, ${slow} of ${points.length}`
      : `no place of ${points.length} below half the mean`,
    "the larger and the deeper, the quicker",
  ]);
}

/** At most three decimals, no zeros behind them. */
function tidy(value: number): string {
  return String(Number(value.toPrecision(3)));
}
