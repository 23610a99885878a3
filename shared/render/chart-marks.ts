// What stands behind the curves of the flow panel: where the port falls back, where it must flatten, what was expected of it.
import { type FlattenLift, liftToFlatten } from "../calc/port-areas.ts";
import type { FallBack, RunResult } from "../model/result.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { around, type Drawing, wish } from "./chart-drawing.ts";
import { boxesAlong } from "./chart-labels.ts";
import { LABEL_HEIGHT, px, py } from "./chart-plot.ts";
import { onLiftAxis } from "./chart-run.ts";
import { clamped, fromPixels } from "./chart-scale.ts";

const SOLID = [1, 0];
/** Half the width of the sign of an expected flow, in pixels. */
const HALF_TARGET = 13;

/**
 * Shades each fall-back of the leading run, and fainter those that its baseline resolves, from the onset to where it
 * recovers, else to its last station, and says how deep it is.
 */
export function drawFalls(drawing: Drawing): void {
  const { leads, lead, runs } = drawing.frame;
  if (!leads) return;
  for (const { run, label } of runs) {
    if (run.role === "baseline" && run.result !== lead) drawFallsOf(drawing, run.result, label);
  }
  drawFallsOf(drawing, lead);
}

/** `whose` names the run where it is not the leading one. */
function drawFallsOf(drawing: Drawing, run: RunResult, whose?: string): void {
  const { frame, y, data, height } = drawing;
  const { axes, theme, x } = frame;
  for (const fall of run.fallBacks) {
    if (whose !== undefined && !fall.resolved) continue;
    const onset = onLiftAxis(run, axes, fall.onset.lift);
    const end = onLiftAxis(run, axes, (fall.recovery ?? fall.last).lift);
    if (onset === undefined || end === undefined || end <= x.low || onset >= x.high) continue;
    const [from, to] = [Math.max(onset, x.low), Math.min(end, x.high)];
    const level = fromSI(fall.onset.flow, axes.flow);
    const isStrong = fall.resolved && whose === undefined;
    const fill = isStrong ? theme.fallBack : theme.unresolved;
    data["falls"]?.push({ x: from, x2: to, y: y.low, y2: y.high, fill });
    if (level >= y.low && level <= y.high)
      data["marks"]?.push({
        x: from,
        x2: to,
        y: level,
        y2: level,
        color: theme.axis,
        width: 1,
        dash: [2, 2],
      });
    const [left, right] = [px(drawing, from), px(drawing, to)];
    const top = py(drawing, level);
    drawing.obstacles.push(...boxesAlong(left, top, right, top));
    for (const edge of [left, right]) drawing.obstacles.push(...boxesAlong(edge, 0, edge, height));
    const labels = fallLabels(fall).map((label) => (whose === undefined ? label : `${whose} ${label}`));
    wish(drawing, labels, isStrong ? theme.text : theme.quiet, (width) => {
      const beside = Math.min(Math.max((left + right - width) / 2, 4), frame.width - width - 4);
      return rows(height - LABEL_HEIGHT - 8, 4).map((top) => [beside, top]);
    });
  }
}

/** Depth of a fall-back in per cent; one that chance may have made says so. */
function fallLabels({ depth, resolved }: FallBack): readonly string[] {
  const percent = `${formatFixed(depth * 100, 1)} %`;
  return resolved ? [`falls back ${percent}`, `−${percent}`] : [`${percent}? not resolved`, `${percent}?`];
}

/** Tops from the lowest upwards, one label apart. */
function rows(lowest: number, highest: number): number[] {
  const tops: number[] = [];
  for (let top = lowest; top >= highest; top -= LABEL_HEIGHT + 4) tops.push(top);
  return tops;
}

/** A quiet line at the lift from which geometry alone makes the curve flatten. */
export function drawFlattenLift(drawing: Drawing): void {
  const { frame, y, data, height } = drawing;
  const { lead, axes, theme, x } = frame;
  const found = lead.setup.port && liftToFlatten(lead.setup.port);
  const at = found && onLiftAxis(lead, axes, found.lift);
  if (found === undefined || at === undefined || at <= x.low || at >= x.high) return;
  data["marks"]?.push({ x: at, x2: at, y: y.low, y2: y.high, color: theme.axis, width: 1, dash: [1, 3] });
  const edge = px(drawing, at);
  drawing.obstacles.push(...boxesAlong(edge, 0, edge, height));
  wish(drawing, FLATTEN_LABELS[found.from], theme.quiet, (width) =>
    rows(height - LABEL_HEIGHT - 8, 4).flatMap((top) => [
      [edge + 6, top],
      [edge - 6 - width, top],
    ]),
  );
}

const FLATTEN_LABELS: Readonly<Record<FlattenLift["from"], readonly string[]>> = {
  throat: ["throat limits from here", "throat limits", "throat"],
  disc: ["curtain exceeds the valve's disc from here", "curtain exceeds disc", "L/D 0.25"],
};

/** Each expected flow as a box at its lift, as high as its tolerance, with a line through the flow itself. */
export function drawExpectations(drawing: Drawing): void {
  const { frame, y, data } = drawing;
  const { lead, axes, theme, x } = frame;
  for (const { lift, flow, within } of frame.leads ? lead.setup.run.expectations : []) {
    const at = onLiftAxis(lead, axes, lift.value);
    const target = fromSI(flow.value, axes.flow);
    if (at === undefined || at < x.low || at > x.high || !(target >= y.low && target <= y.high)) continue;
    const [low = target, high = target] = [1 - within.value, 1 + within.value].map((share) =>
      clamped(y, target * share),
    );
    const middle = px(drawing, at);
    const [from, to] = [Math.max(0, middle - HALF_TARGET), Math.min(frame.width, middle + HALF_TARGET)];
    const [left, right] = [from, to].map((edge) => fromPixels(x, frame.width, edge));
    data["targets"]?.push({ x: left, x2: right, y: low, y2: high, fill: theme.band });
    data["marks"]?.push({
      x: left,
      x2: right,
      y: target,
      y2: target,
      color: theme.text,
      width: 1.2,
      dash: SOLID,
    });
    const top = Math.min(py(drawing, high), py(drawing, target) - 1);
    const bottom = Math.max(py(drawing, low), py(drawing, target) + 1);
    drawing.kept.push({ left: from, top, width: to - from, height: bottom - top });
    const value = `target ${formatFixed(target, 0)} ${axes.flow.symbol}`;
    wish(drawing, [value, "target"], theme.text, (width) =>
      around(middle, py(drawing, target), width, [HALF_TARGET + 3, HALF_TARGET + 16, HALF_TARGET + 32]),
    );
  }
}
