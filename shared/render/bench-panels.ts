// The panels of a bench picture: settle times on lift, and the history of a check plate with its control limits.
import type { BenchReport } from "../calc/bench/bench-report.ts";
import type { PlateHistory } from "../calc/bench/plate-history.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import type { BenchUnits } from "./bench-units.ts";
import { type Json, LABEL_SIZE, lines, panelSpec, pieces, symbols, texts } from "./chart-layers.ts";
import { type ChartScale, chartScale, fromPixels, toPixels } from "./chart-scale.ts";
import { cleanText, clipText } from "./chart-text.ts";
import type { ChartTheme } from "./chart-theme.ts";

export interface BenchPanel {
  readonly spec: Json;
  readonly data: Readonly<Record<string, readonly Json[]>>;
}

export interface PanelPlace {
  /** Beginning of the names of its data. */
  readonly name: string;
  readonly width: number;
  readonly theme: ChartTheme;
}

/** Room to the left of the plots, in pixels. */
export const BENCH_LEFT = 44;
const SETTLE_HEIGHT = 120;
const PLATE_HEIGHT = 110;
const LABEL_GAP = 8;
const LABEL_LINE = LABEL_SIZE + 3;
const SOLID: readonly number[] = [1, 0];
const DASHED: readonly number[] = [4, 3];

/** Nothing where the bench has no settle time at a lift. */
export function settlePanel(
  { bench, settle }: BenchReport,
  units: BenchUnits,
  { name, width, theme }: PanelPlace,
): readonly BenchPanel[] {
  const points = settle?.points ?? [];
  if (settle === undefined || points.length === 0) return [];
  const lifts = points.map(({ lift }) => fromSI(lift, units.lift));
  const quick = bench.quick?.value;
  const x = chartScale([0, ...lifts], 8, false);
  const y = chartScale([0, ...points.map((point) => point.settle), quick ?? 0], 3, true);
  const [intake, exhaust] = theme.series;
  const dots = points.map(({ side, settle: time }, index): Json => {
    const isIntake = side === "intake";
    const color = isIntake ? intake : exhaust;
    return {
      x: lifts[index],
      y: time,
      shape: isIntake ? "circle" : "square",
      size: 24,
      color,
      fill: isIntake ? color : theme.background,
      width: 1.2,
      about: `${side}, ${formatFixed(lifts[index] ?? 0, 3)} ${units.lift.symbol}: ${formatFixed(time, 1)} s`,
    };
  });
  const medians = settle.byLift.map(
    ({ from, to, median }, order): Json => ({
      x: (from + to) / 2,
      y: median,
      order,
      series: "median",
      color: theme.text,
      width: 1.5,
      dash: SOLID,
    }),
  );
  const rules =
    quick === undefined
      ? []
      : [{ x: x.low, x2: x.high, y: quick, y2: quick, color: theme.quiet, width: 1, dash: DASHED }];
  const lastMedian = settle.byLift.at(-1)?.median;
  const labels = marginLabels(
    [
      ...(quick === undefined
        ? []
        : [{ y: quick, text: `quick ${formatFixed(quick, 1)} s`, color: theme.quiet }]),
      ...(lastMedian === undefined ? [] : [{ y: lastMedian, text: "median", color: theme.text }]),
    ],
    { x, y, width, height: SETTLE_HEIGHT },
  );
  const spec = panelSpec(
    {
      width,
      height: SETTLE_HEIGHT,
      x,
      y,
      title: titled(`${bench.id}: time to settle, s`, width),
      indent: BENCH_LEFT,
      lift: `lift, ${units.lift.symbol}`,
      layers: [
        pieces(`${name}-rules`),
        lines(`${name}-medians`),
        symbols(`${name}-points`, "all"),
        texts(`${name}-labels`),
      ],
    },
    theme,
  );
  return [
    {
      spec,
      data: {
        [`${name}-rules`]: rules,
        [`${name}-medians`]: medians,
        [`${name}-points`]: dots,
        [`${name}-labels`]: labels,
      },
    },
  ];
}

/** Nothing for a plate whose checks have no date. */
export function platePanel(
  { bench }: BenchReport,
  { plate, points, limits }: PlateHistory,
  { name, width, theme }: PanelPlace,
): readonly BenchPanel[] {
  const dated = points.flatMap((point) =>
    point.epoch === undefined ? [] : [{ ...point, epoch: point.epoch }],
  );
  if (dated.length === 0) return [];
  const percent = (share: number) => 100 * share;
  const x = dateScale(dated.map(({ epoch }) => epoch));
  const y = chartScale(
    [
      0,
      ...(limits === undefined ? [] : [percent(limits.low), percent(limits.high)]),
      ...dated.flatMap(({ difference, uncertainty = 0 }) => [
        percent(difference - uncertainty),
        percent(difference + uncertainty),
      ]),
    ],
    4,
    true,
  );
  const across = (value: number, color: string, dash: readonly number[]): Json => ({
    x: x.low,
    x2: x.high,
    y: value,
    y2: value,
    color,
    width: 1,
    dash,
  });
  const rules: Json[] = [
    across(0, theme.axis, SOLID),
    ...(limits === undefined
      ? []
      : [
          across(percent(limits.centre), theme.text, DASHED),
          across(percent(limits.low), theme.quiet, DASHED),
          across(percent(limits.high), theme.quiet, DASHED),
        ]),
    ...dated.flatMap(({ epoch, difference, uncertainty }) =>
      uncertainty === undefined
        ? []
        : [
            {
              x: epoch,
              x2: epoch,
              y: percent(difference - uncertainty),
              y2: percent(difference + uncertainty),
              color: theme.baseline,
              width: 1,
              dash: SOLID,
            },
          ],
    ),
  ];
  const dots = dated.map(
    ({ epoch, difference, isOut, date }): Json => ({
      x: epoch,
      y: percent(difference),
      shape: isOut ? "triangle-up" : "circle",
      size: isOut ? 70 : 32,
      color: isOut ? theme.series[1] : theme.series[0],
      fill: isOut ? theme.background : theme.series[0],
      width: isOut ? 1.8 : 1,
      about: `${(date ?? "").slice(0, 10)}: ${signed(percent(difference))} %${isOut ? ", outside the limits" : ""}`,
    }),
  );
  const between = dated.map(
    ({ epoch, difference }, order): Json => ({
      x: epoch,
      y: percent(difference),
      order,
      series: plate,
      color: theme.series[0],
      width: 1,
      dash: SOLID,
    }),
  );
  const labels = marginLabels(
    [
      { y: 0, text: "certified", color: theme.quiet },
      ...(limits === undefined
        ? []
        : [
            {
              y: percent(limits.high),
              text: `upper limit ${signed(percent(limits.high))} %`,
              color: theme.quiet,
            },
            {
              y: percent(limits.centre),
              text: `mean ${signed(percent(limits.centre))} %`,
              color: theme.text,
            },
            {
              y: percent(limits.low),
              text: `lower limit ${signed(percent(limits.low))} %`,
              color: theme.quiet,
            },
          ]),
    ],
    { x, y, width, height: PLATE_HEIGHT },
  );
  const spec = panelSpec(
    {
      width,
      height: PLATE_HEIGHT,
      x,
      y,
      title: titled(`${bench.id}: plate ${plate}, difference from the certified flow, %`, width),
      indent: BENCH_LEFT,
      lift: "",
      layers: [
        pieces(`${name}-rules`),
        lines(`${name}-line`),
        symbols(`${name}-points`, "all"),
        texts(`${name}-labels`),
      ],
    },
    theme,
  );
  return [
    {
      spec: withDates(spec),
      data: {
        [`${name}-rules`]: rules,
        [`${name}-line`]: between,
        [`${name}-points`]: dots,
        [`${name}-labels`]: labels,
      },
    },
  ];
}

function titled(text: string, width: number): string {
  return clipText(cleanText(text), width + BENCH_LEFT, LABEL_SIZE);
}

function signed(value: number): string {
  return `${value > 0 ? "+" : ""}${formatFixed(value, 2)}`;
}

interface MarginLabel {
  readonly y: number;
  readonly text: string;
  readonly color: string;
}

interface Plot {
  readonly x: ChartScale;
  readonly y: ChartScale;
  readonly width: number;
  readonly height: number;
}

/** Labels to the right of a plot at their values, moved apart where they would lie on each other. */
function marginLabels(wanted: readonly MarginLabel[], { x, y, width, height }: Plot): readonly Json[] {
  const placed = wanted
    .map((label) => ({ ...label, at: toPixels(y, height, label.y) }))
    .sort((a, b) => a.at - b.at);
  for (let round = 0; round < 50; round++) {
    let moved = false;
    for (let i = 1; i < placed.length; i++) {
      const below = placed[i - 1];
      const above = placed[i];
      if (below === undefined || above === undefined) continue;
      const lack = LABEL_LINE - (above.at - below.at);
      if (lack <= 0.01) continue;
      below.at -= lack / 2;
      above.at += lack / 2;
      moved = true;
    }
    if (!moved) break;
  }
  return placed.map(({ text, color, at }) => ({
    x: fromPixels(x, width, width + LABEL_GAP),
    y: fromPixels(y, height, at),
    text,
    color,
  }));
}

const DAY = 86_400_000;
const MOST_DATES = 6;

/** From the first to the last check with a little room; ticks at days of checks that do not crowd each other. */
function dateScale(epochs: readonly number[]): ChartScale {
  const first = epochs.reduce((low, epoch) => Math.min(low, epoch), Number.POSITIVE_INFINITY);
  const last = epochs.reduce((high, epoch) => Math.max(high, epoch), Number.NEGATIVE_INFINITY);
  const room = Math.max(10 * DAY, 0.06 * (last - first));
  const low = first - room;
  const high = last + room;
  const apart = (high - low) / MOST_DATES;
  const ticks: number[] = [];
  for (const epoch of [...epochs].sort((a, b) => a - b)) {
    const before = ticks.at(-1);
    if (before === undefined || epoch - before >= apart) ticks.push(epoch);
  }
  return { low, high, ticks, decimals: 0 };
}

/** The horizontal axis read as days; the values are milliseconds, which no time zone of the machine moves. */
function withDates(spec: Json): Json {
  const encoding = spec["encoding"] as Readonly<Record<string, Json>>;
  const x = encoding["x"] as Json;
  const axis = { ...(x["axis"] as Json), labelExpr: "utcFormat(datum.value, '%Y-%m-%d')" };
  return { ...spec, encoding: { ...encoding, x: { ...x, axis } } };
}
