// The two strips under a chart: the discharge coefficient, and how long the bench took to settle.
import type { PortArea } from "../calc/port-areas.ts";
import { type QuickLimit, quickLimit } from "../calc/settle-times.ts";
import type { Bench } from "../model/model.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { type ChartFrame, type DrawnPanel, lineRows, MARGIN_GAP, type StyledRun } from "./chart-frame.ts";
import { type Json, lines, pieces, ring, symbols, texts } from "./chart-layers.ts";
import { furtherMarks, leadingMark } from "./chart-mark.ts";
import { type ChartScale, chartScale, clamped, fromPixels } from "./chart-scale.ts";
import { DOTTED } from "./chart-style.ts";
import { AREA_TITLES } from "./chart-words.ts";

const HEIGHT = 78;
const TICKS = 3;
/** What the time up to which an approach is quick is called, by where it comes from. */
const QUICK_LABELS: Readonly<Record<QuickLimit["from"], string>> = { quick: "quick", settle: "1.5 × usual" };

/** Cd of the averaged stations on the chosen area; `undefined` where no run's port gives that area. */
export function coefficientStrip(frame: ChartFrame, area: PortArea["name"]): DrawnPanel | undefined {
  const scale = coefficientScale(frame.runs);
  if (scale === undefined) return undefined;
  const curves: Json[] = [];
  const dots: Json[] = [];
  const further: Json[] = [];
  frame.runs.forEach((run, index) => {
    const { color, dash, shape, width } = run.style;
    for (const { branch, points } of run.coefficients) {
      const falling = branch === "falling";
      const line = { color, width: width * 0.8, dash: falling ? DOTTED : dash };
      for (const row of lineRows(points, `${index} ${branch}`, line)) curves.push(row);
      // As in the flow panel, a wider ring that a point of the way up stands in.
      const fill = falling ? frame.theme.background : color;
      const size = falling ? 42 : 16;
      const { id } = run.run.result.setup.run;
      const look = { shape, size, color, fill, width: 1 };
      const read = points.filter(({ isEdge }) => !isEdge);
      const drawn = read.map(({ x, y, lines: rows }) => ({ x, y, ...look, ...leadingMark(id, rows) }));
      for (const mark of furtherMarks(id, read)) further.push(mark);
      if (falling) dots.unshift(...drawn);
      else dots.push(...drawn);
    }
  });
  return {
    panel: {
      ...stripOf(frame, AREA_TITLES[area], scale),
      layers: [
        lines("coefficient-lines"),
        symbols("coefficients", "none"),
        ring("coefficients", frame.theme),
        ring("coefficient-places", frame.theme),
      ],
    },
    data: { "coefficient-lines": curves, coefficients: dots, "coefficient-places": further },
  };
}

/** Settle times of the rows, with the time up to which the bench counts as quick; `undefined` where nobody timed. */
export function settleStrip(frame: ChartFrame): DrawnPanel | undefined {
  const y = settleScale(frame);
  if (y === undefined) return undefined;
  const { lead, axes, theme, x, width } = frame;
  const quick = lead.setup.bench && quickTime(lead.setup.bench, axes.time);
  const stems: Json[] = [];
  const dots: Json[] = [];
  const labels: Json[] = [];
  for (const run of frame.runs) {
    const { color, shape } = run.style;
    const isLead = run.run.result === lead;
    for (const settle of run.settles) {
      const point = { x: clamped(x, settle.x), y: settle.y };
      if (isLead) stems.push({ x: point.x, y: 0, x2: point.x, y2: point.y, color, width: 1, dash: [1, 0] });
      const size = isLead ? 26 : 16;
      const mark = leadingMark(run.run.result.setup.run.id, settle.lines);
      dots.push({ ...point, shape, size, color, fill: color, width: 1, ...mark });
    }
  }
  if (quick !== undefined) {
    stems.push({
      x: x.low,
      y: quick.value,
      x2: x.high,
      y2: quick.value,
      color: theme.quiet,
      width: 1,
      dash: [4, 3],
    });
    labels.push({
      x: fromPixels(x, width, width + MARGIN_GAP),
      y: quick.value,
      text: quick.label,
      color: theme.quiet,
    });
  }
  return {
    panel: {
      ...stripOf(frame, `Time to settle, ${axes.time.symbol}`, y),
      layers: [
        pieces("settle-lines"),
        symbols("settles", "none"),
        ring("settles", theme),
        texts("settle-labels"),
      ],
    },
    data: { "settle-lines": stems, settles: dots, "settle-labels": labels },
  };
}

/** Scale of the coefficients; `undefined` where there are none. */
export function coefficientScale(runs: readonly StyledRun[]): ChartScale | undefined {
  const values = runs.flatMap((run) => run.coefficients.flatMap(({ points }) => points.map(({ y }) => y)));
  return values.length === 0 ? undefined : chartScale(values, TICKS, true);
}

/** Scale of the settle times, from zero; `undefined` where there are none. */
export function settleScale({
  runs,
  lead,
  axes,
}: Pick<ChartFrame, "runs" | "lead" | "axes">): ChartScale | undefined {
  const times = runs.flatMap((run) => run.settles.map(({ y }) => y));
  const quick = lead.setup.bench && quickTime(lead.setup.bench, axes.time)?.value;
  return times.length === 0 ? undefined : chartScale([0, ...times, quick ?? 0], TICKS, true);
}

/** The longest quick approach of a bench in the unit, and its label; `undefined` where the bench states neither time. */
export function quickTime(
  bench: Bench,
  unit: Unit,
): { readonly value: number; readonly label: string } | undefined {
  const limit = quickLimit(bench);
  return limit && { value: fromSI(limit.time, unit), label: QUICK_LABELS[limit.from] };
}

function stripOf(frame: ChartFrame, title: string, y: ChartScale) {
  return { width: frame.width, height: HEIGHT, x: frame.x, y, title, indent: frame.left };
}
