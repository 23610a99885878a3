// What leads from a sign in a picture to the line that it was read from, and back.
import type { Json } from "./chart-layers.ts";
import type { ReadPoint } from "./chart-run.ts";

/** Of a line counted from the first one of a block, a run's by its id. */
export function markOf(block: string, line: number): Json {
  return { run: block, line, point: `${block}:${line}` };
}

/** A sign that stands for the readings of several lines leads to the first of them. */
export function leadingMark(block: string, [line]: readonly number[]): Json {
  return line === undefined ? {} : markOf(block, line);
}

/** Where the further readings are found that such signs stand for. */
export function furtherMarks(block: string, points: readonly ReadPoint[]): readonly Json[] {
  return points.flatMap(({ x, y, lines }) =>
    lines.slice(1).map((line) => ({ x, y, ...markOf(block, line) })),
  );
}
