// Tells whether a line opens a block, where its keyword alone does not, by the lines below it.
import type { Heading } from "./directive.ts";
import { findHeading, findProperty } from "./directives/index.ts";
import type { DirectiveLine, Line } from "./tree.ts";

/**
 * A block's lines stand near its heading; what a line opens depends on no more lines than these, its own among them. So
 * reading takes a time that is linear in the length of any file, and an edit changes little above it.
 */
export const LOOK_AHEAD = 100;

/**
 * Some keywords open a block and also stand in one (`bench`, `port`, `engine`, `cam`). Inside a block that takes such a
 * line it is a heading if it has a title, or if what follows belongs to the block it would open. So the order of blocks
 * never matters.
 */
export function opensBlock(
  lines: readonly Line[],
  line: DirectiveLine,
  index: number,
  here: Heading,
  end = index + LOOK_AHEAD,
): boolean {
  const keyword = line.keyword.text;
  if (findProperty(here.block, keyword) === undefined) return true;
  const would = findHeading(keyword);
  if (would === undefined) return true;
  return line.atoms.some((atom) => atom.kind === "text") || goesOnAs(would, lines, index, here, end) === true;
}

/**
 * A misspelt heading still opens its block, since the lines below it belong nowhere else. That it is one is told by the
 * lines below it, or else by where it stands.
 */
export function meantAsHeading(
  lines: readonly Line[],
  line: DirectiveLine,
  index: number,
  here: Heading | undefined,
  heading: Heading,
): boolean {
  if (here === undefined) return true;
  return goesOnAs(heading, lines, index, here, index + LOOK_AHEAD) ?? line.keyword.from === 0;
}

/**
 * Whether the lines below, up to `end`, belong to the block that a line would open rather than to the open one: the first
 * that only one of the two can hold tells. `undefined` where none does.
 */
function goesOnAs(
  would: Heading,
  lines: readonly Line[],
  index: number,
  here: Heading,
  end: number,
): boolean | undefined {
  for (let i = index + 1; i < Math.min(lines.length, end); i++) {
    const next = lines[i];
    if (next === undefined || next.kind === "blank" || next.kind === "conflict") continue;
    let inHere = here.columns !== undefined;
    let inThere = would.columns !== undefined;
    if (next.kind === "directive") {
      const word = next.keyword.text;
      inHere = findProperty(here.block, word) !== undefined;
      inThere = findProperty(would.block, word) !== undefined;
      // What opens a block of its own says nothing about this one.
      if (!inHere && findHeading(word) !== undefined && opensBlock(lines, next, i, would, end))
        return undefined;
    }
    if (inHere !== inThere) return inThere;
  }
  return undefined;
}
