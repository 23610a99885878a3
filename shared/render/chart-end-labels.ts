// Names each run at the end of its line, with its symbol, so that a chart needs no legend.
import { type ChartFrame, MARGIN_GAP, type StyledRun } from "./chart-frame.ts";
import { spreadLabels } from "./chart-labels.ts";
import { type Json, LABEL_SIZE } from "./chart-layers.ts";
import type { LinePoint } from "./chart-run.ts";
import { type ChartScale, clamped, fromPixels, toPixels } from "./chart-scale.ts";
import { textWidth, wrapText } from "./chart-text.ts";

/** From the plot's edge to the text, in pixels: the run's symbol stands between. */
export const END_LABEL_INDENT = MARGIN_GAP + 14;
const MOST_LINES = 3;
const LINE_HEIGHT = LABEL_SIZE + 3;
/** Between two labels. */
const GAP = 3;
/** A label that stands this far from its line's end has a leader. */
const LEADER_FROM = 5;

interface Ending {
  readonly run: StyledRun;
  readonly end: LinePoint;
  readonly lines: readonly string[];
}

/** Which runs are named: all, or of a crowd the highlighted ones. */
type Named = "all" | "highlighted";

/**
 * Labels, symbols and leaders in the right margin; none for a lone run. Those that are not named, and the last ones where
 * not all fit, are only counted. `endOf` is where a run's line ends.
 */
export function endLabels(
  frame: ChartFrame,
  y: ChartScale,
  height: number,
  named: Named,
  endOf: (run: StyledRun) => LinePoint | undefined = lastPoint,
): { readonly labels: Json[]; readonly keys: Json[]; readonly leaders: Json[] } {
  const { x, width, theme } = frame;
  const drawn = { labels: [] as Json[], keys: [] as Json[], leaders: [] as Json[] };
  if (frame.runs.length < 2) return drawn;
  const { endings, tops, left } = fitting(frame, y, height, named, endOf);
  const at = (pixels: number) => fromPixels(x, width, pixels);
  const level = (pixels: number) => fromPixels(y, height, height - pixels);
  let lowest = 0;
  endings.forEach(({ run, end, lines }, index) => {
    const top = tops[index] ?? 0;
    const middle = top + (lines.length * LINE_HEIGHT) / 2;
    lowest = Math.max(lowest, top + lines.length * LINE_HEIGHT + GAP);
    const { color, shape } = run.style;
    const { isContext } = run.style;
    lines.forEach((text, line) => {
      drawn.labels.push({
        x: at(width + END_LABEL_INDENT),
        y: level(top + (line + 0.5) * LINE_HEIGHT),
        text,
        color: isContext ? theme.quiet : theme.text,
      });
    });
    drawn.keys.push({
      x: at(width + MARGIN_GAP + 5),
      y: level(middle),
      shape,
      size: isContext ? 19 : 32,
      color,
      fill: color,
      width: 1,
    });
    const endX = toPixels(x, width, clamped(x, end.x));
    const endY = height - toPixels(y, height, clamped(y, end.y));
    if (Math.abs(endY - middle) < LEADER_FROM && endX > width - 2 * MARGIN_GAP) return;
    drawn.leaders.push({
      x: at(endX + 5),
      y: clamped(y, end.y),
      x2: at(width + MARGIN_GAP),
      y2: level(middle),
      color,
      width: 0.7,
      dash: [1, 0],
    });
  });
  if (left > 0) {
    const counted = moreRuns(left);
    drawn.labels.push({
      x: at(width + END_LABEL_INDENT),
      y: level(lowest + LINE_HEIGHT / 2),
      text: textWidth(counted, LABEL_SIZE) <= frame.right - END_LABEL_INDENT ? counted : `+${left}`,
      color: theme.quiet,
    });
  }
  return drawn;
}

/** What stands for the labels that found no room. */
export function moreRuns(count: number): string {
  return `and ${count} more`;
}

/** Height that all labels of up to `most` lines need one above the other, in pixels. */
export function endLabelsHeight(frame: Pick<ChartFrame, "runs" | "right">, most = MOST_LINES): number {
  const endings = endingsOf(frame.runs, frame.right, most, lastPoint);
  return endings.reduce((sum, { lines }) => sum + lines.length * LINE_HEIGHT + GAP, 0);
}

/** The end of the line on the way up, else of any, else the last point. */
function lastPoint({ lines, points }: StyledRun): LinePoint | undefined {
  const line = lines.find(({ branch }) => branch === "rising") ?? lines[0];
  return line?.points.at(-1) ?? points.findLast((point) => !point.void);
}

function endingsOf(
  runs: readonly StyledRun[],
  right: number,
  most: number,
  endOf: (run: StyledRun) => LinePoint | undefined,
): Ending[] {
  const rank = { main: 0, baseline: 1, compared: 2 };
  return runs
    .flatMap((run) => {
      const end = endOf(run);
      const lines = wrapText(run.label, right - END_LABEL_INDENT, LABEL_SIZE, most);
      return end === undefined ? [] : [{ run, end, lines }];
    })
    .sort((a, b) => rank[a.run.run.role] - rank[b.run.run.role]);
}

/** As many labels as fit: all with their lines, else all on one line, else the first ones. */
function fitting(
  { runs, right }: ChartFrame,
  y: ChartScale,
  height: number,
  named: Named,
  endOf: (run: StyledRun) => LinePoint | undefined,
) {
  const chosen = named === "all" ? runs : runs.filter(({ style }) => !style.isContext);
  const uncounted = runs.length - chosen.length;
  const room = (left: number) => (left > 0 ? height - LINE_HEIGHT - GAP : height);
  const spread = (endings: readonly Ending[], high: number) =>
    spreadLabels(
      endings.map(({ end, lines }) => ({
        middle: height - toPixels(y, height, clamped(y, end.y)) + GAP / 2,
        height: lines.length * LINE_HEIGHT + GAP,
      })),
      0,
      high,
    );
  const full = endingsOf(chosen, right, MOST_LINES, endOf);
  const all = spread(full, room(uncounted));
  if (all !== undefined) return { endings: full, tops: all, left: uncounted };
  const short = endingsOf(chosen, right, 1, endOf);
  const most = Math.floor(height / (LINE_HEIGHT + GAP));
  for (let count = Math.min(short.length, most); count > 0; count--) {
    const left = uncounted + short.length - count;
    const endings = short.slice(0, count);
    const tops = spread(endings, room(left));
    if (tops !== undefined) return { endings, tops, left };
  }
  return { endings: [], tops: [], left: uncounted + short.length };
}
