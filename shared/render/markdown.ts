// Lets a text of the record stand in Markdown as itself.
import { printable } from "../text/printable.ts";

/** What begins markup inside a line, a table's cell or a heading. */
const MARKUP = /[\\`*_[\]<>|&~]/g;

/** A text of one line without any markup of its own; pipes are escaped, so that it may stand in a table. */
export function markdownText(text: string): string {
  return printable(text).replace(MARKUP, (character) => `\\${character}`);
}
