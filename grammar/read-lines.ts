// Reads a text line by line and, after an edit, only the lines that the edit has changed.
import { commonEnd, commonStart } from "../shared/text/common.ts";
import { splitLines } from "../shared/text/lines.ts";
import { parseLine } from "./line-parser.ts";
import type { Line } from "./tree.ts";

/** A text that was read before. */
export interface ReadText {
  readonly text: string;
  readonly lines: readonly Line[];
}

/**
 * The nodes of all lines of a text. Lines before and after what differs from `previous` keep their nodes, so that an edit
 * costs what it changes; the result is the same as without `previous`.
 */
export function readLines(text: string, previous?: ReadText): Line[] {
  // A line end of two characters can be cut in half by an edit; such texts are rare, and are compared line by line.
  if (previous === undefined || text.includes("\r") || previous.text.includes("\r")) {
    return readAnew(splitLines(text), previous?.lines ?? []);
  }
  const { lines } = previous;
  const same = commonStart(text, previous.text);
  let before = 0;
  let from = 0;
  for (let line = lines[0]; line !== undefined; line = lines[before]) {
    const next = from + line.text.length + 1;
    if (next > same) break;
    from = next;
    before++;
  }
  const sameEnd = commonEnd(text, previous.text, Math.min(text.length, previous.text.length) - from);
  let after = 0;
  let to = 0;
  for (
    let line = lines.at(-1);
    line !== undefined && after < lines.length - before;
    line = lines.at(-1 - after)
  ) {
    const next = to + line.text.length + 1;
    if (next > sameEnd) break;
    to = next;
    after++;
  }
  const changed = splitLines(text.slice(from, text.length - to)).map(parseLine);
  return lines.slice(0, before).concat(changed, lines.slice(lines.length - after));
}

function readAnew(texts: readonly string[], previous: readonly Line[]): Line[] {
  const most = Math.min(texts.length, previous.length);
  let before = 0;
  while (before < most && texts[before] === previous[before]?.text) before++;
  let after = 0;
  while (after < most - before && texts.at(-1 - after) === previous.at(-1 - after)?.text) after++;
  const changed = texts.slice(before, texts.length - after).map(parseLine);
  return previous.slice(0, before).concat(changed, previous.slice(previous.length - after));
}
