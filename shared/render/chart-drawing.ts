// The flow panel while it is being drawn: its rows of data, and the labels that still look for room.
import type { ChartFrame } from "./chart-frame.ts";
import type { Box, Corner } from "./chart-labels.ts";
import type { Json } from "./chart-layers.ts";
import {
  LABEL_HEIGHT,
  type LabelWish,
  labelWish,
  type Place,
  type Plot,
  placedLabels,
} from "./chart-plot.ts";
import { fromPixels } from "./chart-scale.ts";

/** More labels inside the plot than this say nothing, and finding room for them takes long. */
const MOST_LABELS = 60;
/** What a step further away costs: as much as to stand on so many pieces of a line. */
const FURTHER = 4;
/** From so many pixels on a label is led to what it names; its line begins this far from the middle of that. */
const LEAST_LEADER = 16;
const LEADER_GAP = 7;

/** Everything inside the panel, while it is being drawn. */
export interface Drawing extends Plot {
  readonly frame: ChartFrame;
  readonly data: Record<string, Json[]>;
  readonly wishes: LabelWish[];
  /** What labels keep off where they can, lines above all. */
  readonly obstacles: Box[];
  /** What no label may cover: points. */
  readonly kept: Box[];
}

/** Asks for room for a label, in the first of its forms that finds any; the first labels asked for are served. */
export function wish(
  { wishes }: Drawing,
  forms: readonly string[],
  color: string,
  corners: (width: number) => readonly Corner[],
  of?: Place,
): void {
  const [first, ...shorter] = forms;
  if (first === undefined || first === "" || wishes.length >= MOST_LABELS) return;
  wishes.push({ ...labelWish([first, ...shorter], color, corners), ...(of !== undefined && { of }) });
}

/** Corners of a label around a point, the nearer the cheaper. */
export function around(x: number, y: number, width: number, distances: readonly number[]): Corner[] {
  return distances.flatMap((distance, ring) =>
    corners(x, y, width, distance).map(([left, top]) => [left, top, FURTHER * ring] as const),
  );
}

/** Below to the right first, where a rising curve leaves room. */
function corners(x: number, y: number, width: number, distance: number): Corner[] {
  const [right, left, middle] = [x + distance, x - distance - width, x - width / 2];
  const half = LABEL_HEIGHT / 2;
  return [
    [right, y - half],
    [right, y + 2],
    [middle, y + distance],
    [left, y - LABEL_HEIGHT - 2],
    [left, y - half],
    [middle, y - distance - LABEL_HEIGHT],
    [right, y - LABEL_HEIGHT - 2],
    [left, y + 2],
    [left, y + distance],
  ];
}

export function drawLabels(drawing: Drawing): void {
  const { data, wishes, obstacles, kept } = drawing;
  for (const { wish, box, row } of placedLabels(drawing, wishes, obstacles, kept)) {
    data["labels"]?.push(row);
    if (wish.of !== undefined) drawLeader(drawing, wish.of, box);
  }
}

/** A line from what a label names to the label, where the two do not stand together. */
function drawLeader({ frame, data, x, y, width, height }: Drawing, of: Place, box: Box): void {
  const [left, top] = of;
  const nearest = [within(left, box.left, box.width), within(top, box.top, box.height)] as const;
  const [dx, dy] = [nearest[0] - left, nearest[1] - top];
  const length = Math.hypot(dx, dy);
  if (length < LEAST_LEADER) return;
  data["marks"]?.push({
    x: fromPixels(x, width, left + (LEADER_GAP / length) * dx),
    y: fromPixels(y, height, height - top - (LEADER_GAP / length) * dy),
    x2: fromPixels(x, width, nearest[0]),
    y2: fromPixels(y, height, height - nearest[1]),
    color: frame.theme.axis,
    width: 0.8,
    dash: [1, 0],
  });
}

function within(value: number, from: number, size: number): number {
  return Math.min(Math.max(value, from), from + size);
}
