// Draws runs as a Vega-Lite picture: corrected flow on lift, and strips of gains, discharge coefficient and settle times.
import type { PortArea } from "../calc/port-areas.ts";
import type { RunResult } from "../model/result.ts";
import { captionPanel } from "./chart-caption.ts";
import { BAND_LABEL, differenceScale, differenceStrip } from "./chart-difference-strip.ts";
import { differencesOf, extremes } from "./chart-differences.ts";
import { END_LABEL_INDENT, endLabelsHeight, moreRuns } from "./chart-end-labels.ts";
import { barredRuns, flowPanel, flowScale } from "./chart-flow.ts";
import { type ChartFrame, type DrawnPanel, MARGIN_GAP, type StyledRun } from "./chart-frame.ts";
import { AXIS_SIZE, CURSOR_PARAM, LABEL_SIZE, panelSpec, strongRows } from "./chart-layers.ts";
import { type ChartAxes, type ChartRun, type DrawnRun, drawnRun, onLiftAxis } from "./chart-run.ts";
import { type ChartScale, chartScale, tickText } from "./chart-scale.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import {
  type ChartLifts,
  cutDifferences,
  cutRun,
  liftsOf,
  type Stretch,
  stretchOn,
} from "./chart-stretch.ts";
import { coefficientScale, coefficientStrip, quickTime, settleScale, settleStrip } from "./chart-strips.ts";
import { runStyles } from "./chart-style.ts";
import { textWidth } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { chartFacts, chartNotes, chartTitle, endLabel, fullNotes, liftTitle } from "./chart-words.ts";
import { displayUnits } from "./display-units.ts";
import type { WantedUnits } from "./wanted-units.ts";

export interface ChartOptions {
  /** Of the whole picture, in pixels; 760 unless stated, never less than 280. */
  readonly width?: number;
  /** L/D only where the leading run's port states its valve; else, and unless stated, lift. */
  readonly xAxis?: "lift" | "lift-ratio";
  /** The area that the coefficient is set on; the curtain unless stated. */
  readonly cd?: PortArea["name"];
  /** Units to show instead of the record's own, each for its dimension. */
  readonly units?: WantedUnits;
  /** Of more than four equals the one drawn in colour; unless stated, the highest and the lowest in the mean. */
  readonly highlight?: RunResult;
  /** The part of the lift axis that is shown, in m; all of it unless stated, and where none of it is left. */
  readonly lifts?: Stretch;
  /** `LIGHT_THEME` unless stated. */
  readonly theme?: ChartTheme;
}

export interface DrawnChart {
  readonly spec: VegaLiteSpec;
  /** Missing where nothing is drawn. */
  readonly lifts?: ChartLifts;
}

/** Room for the axes' numbers: at least this, and this much more than the widest. */
const LEAST_LEFT = 44;
const LEFT_GAP = 10;
/** Room to the right of the plot: at least for half a tick's number, at most this share of the picture. */
const LEAST_MARGIN = 16;
const LARGEST_MARGIN = 0.27;
/** Between two ticks of the lift axis, about. */
const LIFT_TICK = 90;
/** Up to so many runs all have a label at their line's end. */
const FEW_RUNS = 8;
/** A last station further out than this, over the highest lift, is taken for a slip. */
const MOST_PLANNED = 10;

/**
 * The picture of one or more runs. The leading run is the first of role `main`, else the first: its units, conditions,
 * fall-backs, expectations and valve are the chart's (fall-backs and expectations not among several equals). Runs quoted otherwise say so in their labels. Points that took no
 * part in means do not stretch the axes: beyond them they stand at the edge with their value. Without a point the
 * picture says so in words. While the same runs keep to the same axes everything but `datasets` stays as it is.
 */
export function chartSpec(runs: readonly ChartRun[], options: ChartOptions = {}): VegaLiteSpec {
  return drawnChart(runs, options).spec;
}

/** The picture, and what of the lift axis it shows. */
export function drawnChart(runs: readonly ChartRun[], options: ChartOptions = {}): DrawnChart {
  const theme = options.theme ?? LIGHT_THEME;
  const outer = pictureWidth(options.width);
  const lead = (runs.find(({ role }) => role === "main") ?? runs[0])?.result;
  if (lead === undefined) return { spec: emptyChart("No run to draw", "", outer, theme) };
  const { frame, whole } = frameOf(runs, lead, outer, options, theme);
  const title = chartTitle(lead, runs);
  if (!frame.runs.some(hasMark)) {
    return { spec: emptyChart("No point to draw: no row gives a lift and a flow", title, outer, theme) };
  }
  const area = options.cd ?? "curtain";
  const height = Math.max(mainHeight(frame.width), Math.min(640, endLabelsHeight(frame)));
  const strips = [differenceStrip(frame), coefficientStrip(frame, area), settleStrip(frame)].filter(
    (strip) => strip !== undefined,
  );
  const flow = flowPanel(frame, height);
  const panels: DrawnPanel[] = [flow, ...strips];
  const noted = {
    drawn: frame.runs,
    barred: barredRuns(frame.runs, lead),
    bars: flow.data["bars"]?.length ?? 0,
    lead,
    area,
    hasExtremes: frame.isCrowd && options.highlight === undefined,
    isStretch: frame.isStretch,
  };
  const caption = captionPanel(frame, chartNotes(noted), fullNotes(noted), outer - 2 * PADDING);
  const data = [...panels, caption].flatMap((panel) => Object.entries(panel.data));
  const spec = {
    ...shellOf(title, chartFacts(runs, frame.axes.wanted), outer, frame.left, theme),
    params: [{ name: CURSOR_PARAM, value: "" }],
    datasets: Object.fromEntries(data.map(([name, rows]) => [name, strongRows(rows, theme)])),
    vconcat: [
      ...panels.map(({ panel }, index) =>
        panelSpec({ ...panel, ...(index === panels.length - 1 && { lift: liftTitle(frame.axes) }) }, theme),
      ),
      caption.spec,
    ],
  };
  const { axes, x } = frame;
  return { spec, lifts: { whole: liftsOf(whole, lead, axes), shown: liftsOf(x, lead, axes) } };
}

function frameOf(
  runs: readonly ChartRun[],
  lead: RunResult,
  outer: number,
  options: ChartOptions,
  theme: ChartTheme,
): { readonly frame: ChartFrame; readonly whole: ChartScale } {
  const wanted = options.units ?? [];
  const units = displayUnits(lead.setup, wanted);
  const ratio = options.xAxis === "lift-ratio" && (lead.setup.port?.valve?.value ?? 0) > 0;
  const axes: ChartAxes = { lift: units.lift, ratio, flow: units.flow, time: units.time, wanted };
  const leads = runs.length === 1 || runs.some(({ role }) => role === "main");
  const differences = differencesOf(runs, lead, axes);
  const isCrowd =
    runs.length > theme.series.length && differences !== undefined && "mean" in differences.from;
  const highlighted = isCrowd
    ? options.highlight === undefined
      ? extremes(differences)
      : [options.highlight]
    : [];
  const styles = runStyles(runs, theme, highlighted);
  const drawn = (run: ChartRun, within?: Stretch) =>
    drawnRun(run, axes, options.cd ?? "curtain", leads && isShaded(run, lead), within);
  const styled = runs.flatMap((run, index): StyledRun[] => {
    const style = styles[index];
    const label = endLabel(run, lead, wanted);
    return style === undefined ? [] : [{ ...drawn(run), style, label }];
  });
  // The leading run comes last, so that it lies on top.
  const all = [...styled].sort((a, b) => rank(a, lead) - rank(b, lead));
  const whole = liftScale(all, lead, axes, outer);
  const asked = stretchOn(whole, lead, axes, options.lifts);
  const cut =
    asked === undefined
      ? []
      : all.map((run) => cutRun(run.crowded > 0 ? { ...run, ...drawn(run.run, asked) } : run, asked));
  const stretch = cut.some(hasMark) ? asked : undefined;
  const isStretch = stretch !== undefined;
  const ordered = isStretch ? cut : all;
  const shown = isStretch && differences !== undefined ? cutDifferences(differences, stretch) : differences;
  const found = shown === undefined ? {} : { differences: shown };
  const left = leftMargin({ runs: ordered, lead, axes, isStretch, ...found });
  const right = rightMargin({ runs: ordered, lead, axes, isCrowd, ...found }, outer);
  const width = outer - 2 * PADDING - left - right;
  const x = isStretch ? chartScale(stretch, width / LIFT_TICK, false) : liftScale(ordered, lead, axes, width);
  const frame = {
    lead,
    leads,
    runs: ordered,
    isCrowd,
    ...found,
    axes,
    theme,
    x,
    isStretch,
    width,
    left,
    right,
  };
  return { frame, whole };
}

function hasMark({ points, lines }: DrawnRun): boolean {
  return points.length > 0 || lines.length > 0;
}

/** Whether the fall-backs of a run are shaded, where there is a leading one. */
function isShaded({ role, result }: ChartRun, lead: RunResult): boolean {
  return result === lead || role === "baseline";
}

function rank({ run, style }: StyledRun, lead: RunResult): number {
  if (run.role === "baseline") return 0;
  if (style.isContext) return 1;
  return run.result === lead ? 3 : 2;
}

/** From zero to the highest lift that took part in means, or to the last station that is still to come. */
function liftScale(runs: readonly StyledRun[], lead: RunResult, axes: ChartAxes, width: number): ChartScale {
  const all = runs.flatMap(({ points }) => points);
  const usable = all.filter((point) => point.usable);
  const values = (usable.length > 0 ? usable : all).map(({ x }) => x);
  const highest = values.reduce((most, value) => Math.max(most, value), 0);
  const last = lead.setup.stations?.value.last.value;
  const planned = last === undefined ? undefined : onLiftAxis(lead, axes, last);
  const isNear = planned !== undefined && planned <= MOST_PLANNED * highest;
  return chartScale(
    [0, highest > 0 ? highest : 1, ...values, ...(isNear ? [planned] : [])],
    width / LIFT_TICK,
    false,
  );
}

function leftMargin(frame: Pick<ChartFrame, "runs" | "lead" | "axes" | "isStretch" | "differences">): number {
  const scales = [flowScale(frame), differenceScale(frame), coefficientScale(frame.runs), settleScale(frame)];
  const widest = scales.flatMap(
    (scale) => scale?.ticks.map((tick) => textWidth(tickText(scale, tick), AXIS_SIZE)) ?? [],
  );
  return Math.ceil(Math.max(LEAST_LEFT, LEFT_GAP + Math.max(0, ...widest)));
}

function rightMargin(
  {
    runs,
    lead,
    axes,
    isCrowd,
    differences,
  }: Pick<ChartFrame, "runs" | "lead" | "axes" | "isCrowd" | "differences">,
  outer: number,
): number {
  const most = outer * LARGEST_MARGIN;
  const quick = runs.some(({ settles }) => settles.length > 0) && lead.setup.bench;
  const quickLabel = quick ? quickTime(quick, axes.time)?.label : undefined;
  const wanted = [
    ...(differences !== undefined && !isCrowd ? [MARGIN_GAP + textWidth(BAND_LABEL, LABEL_SIZE)] : []),
    ...(runs.length > FEW_RUNS || isCrowd
      ? [END_LABEL_INDENT + textWidth(moreRuns(runs.length), LABEL_SIZE)]
      : []),
    ...(runs.length > 1 ? runs.map(({ label }) => END_LABEL_INDENT + textWidth(label, LABEL_SIZE)) : []),
    ...(quickLabel === undefined ? [] : [MARGIN_GAP + textWidth(quickLabel, LABEL_SIZE)]),
  ];
  return Math.ceil(Math.min(most, Math.max(LEAST_MARGIN, ...wanted)));
}

/** Flat enough for slopes to be seen, high enough for a drop of a few per cent. */
function mainHeight(width: number): number {
  return Math.round(Math.min(460, Math.max(220, width * 0.56)));
}
