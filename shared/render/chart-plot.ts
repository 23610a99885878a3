// Where things stand in one panel of a chart, and the labels in it that look for room.
import { type Box, type Corner, placeLabels, type Wish } from "./chart-labels.ts";
import { type Json, LABEL_SIZE } from "./chart-layers.ts";
import { type ChartScale, fromPixels, toPixels } from "./chart-scale.ts";
import { textWidth } from "./chart-text.ts";

/** The plot of a panel, inside its axes, in pixels. */
export interface Plot {
  readonly x: ChartScale;
  readonly y: ChartScale;
  readonly width: number;
  readonly height: number;
}

/** A point of the plot in pixels from its upper left corner. */
export type Place = readonly [left: number, top: number];

/** A label in the forms that it may take, the shortest last. */
export interface LabelWish extends Wish {
  readonly forms: readonly string[];
  readonly color: string;
  /** What it names, in pixels; a label that finds room only further off is led to it. */
  readonly of?: Place;
}

/** A label that found room. */
export interface PlacedLabel {
  readonly wish: LabelWish;
  readonly box: Box;
  /** Its row in a text layer. */
  readonly row: Json;
}

export const LABEL_HEIGHT = LABEL_SIZE + 3;

export function px({ x, width }: Plot, value: number): number {
  return toPixels(x, width, value);
}

/** Pixels from the top. */
export function py({ y, height }: Plot, value: number): number {
  return height - toPixels(y, height, value);
}

/** Asks for room for a label; `corners` of a form of that width. */
export function labelWish(
  forms: readonly [string, ...string[]],
  color: string,
  corners: (width: number) => readonly Corner[],
): LabelWish {
  const wishes = forms.map((text): Wish => {
    const width = textWidth(text, LABEL_SIZE);
    return { width, height: LABEL_HEIGHT, corners: corners(width) };
  });
  const whole = wishes.reduceRight((instead, longer) => ({ ...longer, instead }));
  return { ...whole, forms, color };
}

/** Rows of a text layer: the labels that found room, the first asked for served first. */
export function labelRows(...given: Parameters<typeof placedLabels>): Json[] {
  return placedLabels(...given).map(({ row }) => row);
}

export function placedLabels(
  plot: Plot,
  wishes: readonly LabelWish[],
  obstacles: readonly Box[],
  kept: readonly Box[],
): readonly PlacedLabel[] {
  const whole = { left: 0, top: 0, width: plot.width, height: plot.height };
  return placeLabels(wishes, obstacles, kept, whole).flatMap((box, at) => {
    const wish = wishes[at];
    if (box === undefined || wish === undefined) return [];
    const row = {
      x: fromPixels(plot.x, plot.width, box.left),
      y: fromPixels(plot.y, plot.height, plot.height - box.top - box.height / 2),
      text: wish.forms[box.form],
      color: wish.color,
    };
    return [{ wish, box, row }];
  });
}
