// Finds what stands on a line of a file: its block and its node.
import { blockIndexAt } from "../../grammar/block-at.ts";
import type { Outline, PlacedBlock } from "../../grammar/outline.ts";
import type { Line } from "../../grammar/tree.ts";

/** The block that a line belongs to; `undefined` above the first one. */
export function blockAt({ blocks }: Outline, line: number): PlacedBlock | undefined {
  return blocks[blockIndexAt(blocks, line)];
}

/** The node of a line as its block reads it: a row whose first column is a choice is a row. */
export function lineAt(outline: Outline, line: number): Line | undefined {
  const own = outline.lines[line];
  const placed = blockAt(outline, line);
  const inBlock = placed?.block.lines[line - placed.start];
  return inBlock?.kind === "row" ? inBlock : own;
}

/** The last line of the block that begins on a line, which is that line itself where no block does. */
export function lastLineOf({ blocks }: Outline, start: number): number {
  return start + (blocks.find((placed) => placed.start === start)?.block.lines.length ?? 1) - 1;
}
