// Reads a text line by line and, after an edit, only the lines that the edit has changed.
import { splitLines } from "../shared/text/lines.ts";
import { parseLine } from "./line-parser.ts";
import type { Line } from "./tree.ts";

/**
 * The nodes of all lines of a text. Lines before and after what differs from `previous` keep their nodes, so that an edit
 * costs what it changes; the result is the same as without `previous`.
 */
export function readLines(text: string, previous: readonly Line[] = []): Line[] {
  const texts = splitLines(text);
  const most = Math.min(texts.length, previous.length);
  let before = 0;
  while (before < most && texts[before] === previous[before]?.text) before++;
  let after = 0;
  while (after < most - before && texts.at(-1 - after) === previous.at(-1 - after)?.text) after++;
  const changed = texts.slice(before, texts.length - after).map(parseLine);
  if (before === 0 && after === 0) return changed;
  return [...previous.slice(0, before), ...changed, ...previous.slice(previous.length - after)];
}
