// The notes under a chart. They are data, in room that does not change, so that an edit moves nothing above them.
import type { ChartFrame } from "./chart-frame.ts";
import { type Json, NOTE_SIZE } from "./chart-layers.ts";
import { wrapText } from "./chart-text.ts";

/** More than between panels, in pixels: the title of the lift axis stands above. */
const DISTANCE = 12;
const LINE_HEIGHT = NOTE_SIZE + 4;

/** The notes, in the room that the longest ones need, `width` pixels wide. */
export function captionPanel(
  { left, theme, width: plot }: Pick<ChartFrame, "left" | "theme" | "width">,
  notes: string,
  longest: string,
  width: number,
): { readonly spec: Json; readonly data: Readonly<Record<string, readonly Json[]>> } {
  // A little less than all: the size of a picture is rounded up.
  const most = width - 1;
  const lines = Math.max(1, wrapText(longest, most, NOTE_SIZE, Number.POSITIVE_INFINITY).length);
  const height = DISTANCE + lines * LINE_HEIGHT;
  const axis = (high: number) => ({
    type: "quantitative",
    scale: { domain: [0, high], nice: false, zero: false },
    axis: null,
  });
  const rows = wrapText(notes, most, NOTE_SIZE, lines).map((text, line) => ({
    x: 0.25 - left,
    y: (lines - line - 0.5) * LINE_HEIGHT,
    text,
  }));
  return {
    spec: {
      width: plot,
      height,
      view: { stroke: null },
      data: { name: "notes" },
      mark: { type: "text", align: "left", baseline: "middle", fontSize: NOTE_SIZE, color: theme.quiet },
      encoding: {
        x: { field: "x", ...axis(plot) },
        y: { field: "y", ...axis(height) },
        text: { field: "text", type: "nominal" },
      },
    },
    data: { notes: rows },
  };
}
