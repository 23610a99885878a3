// The flow panel while it is being drawn: its rows of data, and the labels that still look for room.
import type { ChartFrame } from "./chart-frame.ts";
import { type Box, type Corner, placeLabels, type Wish } from "./chart-labels.ts";
import { type Json, LABEL_SIZE } from "./chart-layers.ts";
import { type ChartScale, fromPixels, toPixels } from "./chart-scale.ts";
import { textWidth } from "./chart-text.ts";

export const LABEL_HEIGHT = LABEL_SIZE + 3;
/** More labels inside the plot than this say nothing, and finding room for them takes long. */
const MOST_LABELS = 60;
/** What a step further away costs: as much as to stand on so many pieces of a line. */
const FURTHER = 4;

/** Everything inside the panel, while it is being drawn. */
export interface Drawing {
  readonly frame: ChartFrame;
  readonly height: number;
  readonly y: ChartScale;
  readonly data: Record<string, Json[]>;
  readonly wishes: (Wish & { readonly forms: readonly string[]; readonly color: string })[];
  /** What labels keep off where they can, lines above all. */
  readonly obstacles: Box[];
  /** What no label may cover: points. */
  readonly kept: Box[];
}

export function px({ frame }: Drawing, x: number): number {
  return toPixels(frame.x, frame.width, x);
}

/** Pixels from the top. */
export function py({ y, height }: Drawing, flow: number): number {
  return height - toPixels(y, height, flow);
}

/** Asks for room for a label, in the first of its forms that finds any; the first labels asked for are served. */
export function wish(
  { wishes }: Drawing,
  forms: readonly string[],
  color: string,
  corners: (width: number) => Wish["corners"],
): void {
  let found: Wish | undefined;
  for (const text of forms.toReversed()) {
    const width = textWidth(text, LABEL_SIZE);
    found = {
      width,
      height: LABEL_HEIGHT,
      corners: corners(width),
      ...(found !== undefined && { instead: found }),
    };
  }
  if (found === undefined || forms[0] === "" || wishes.length >= MOST_LABELS) return;
  wishes.push({ ...found, forms, color });
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

export function drawLabels({ frame, y, height, data, wishes, obstacles, kept }: Drawing): void {
  const whole = { left: 0, top: 0, width: frame.width, height };
  placeLabels(wishes, obstacles, kept, whole).forEach((box, index) => {
    const wish = wishes[index];
    if (box === undefined || wish === undefined) return;
    data["labels"]?.push({
      x: fromPixels(frame.x, frame.width, box.left),
      y: fromPixels(y, height, height - box.top - box.height / 2),
      text: wish.forms[box.form],
      color: wish.color,
    });
  });
}
