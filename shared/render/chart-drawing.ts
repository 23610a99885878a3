// The flow panel while it is being drawn: its rows of data, and the labels that still look for room.
import type { ChartFrame } from "./chart-frame.ts";
import type { Box, Corner } from "./chart-labels.ts";
import type { Json } from "./chart-layers.ts";
import { LABEL_HEIGHT, type LabelWish, labelRows, labelWish, type Plot } from "./chart-plot.ts";

/** More labels inside the plot than this say nothing, and finding room for them takes long. */
const MOST_LABELS = 60;
/** What a step further away costs: as much as to stand on so many pieces of a line. */
const FURTHER = 4;

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
): void {
  const [first, ...shorter] = forms;
  if (first === undefined || first === "" || wishes.length >= MOST_LABELS) return;
  wishes.push(labelWish([first, ...shorter], color, corners));
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
  drawing.data["labels"]?.push(...labelRows(drawing, drawing.wishes, drawing.obstacles, drawing.kept));
}
