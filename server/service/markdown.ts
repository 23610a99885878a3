// Text of a record inside Markdown: shown as it is, never as markup.
import { printable } from "../../shared/text/printable.ts";

/** The text with everything escaped that Markdown or HTML could read as markup or as a link. */
export function escaped(text: string): string {
  return printable(text).replace(/[\\`*_{}[\]()<>#+\-.!|~&:@"'=^$]/g, "\\$&");
}

/** Lines set as code, whatever they hold. */
export function code(lines: readonly string[]): string {
  const text = lines.map(printable).join("\n");
  const longest = Math.max(2, ...(text.match(/`+/g) ?? []).map((run) => run.length));
  const fence = "`".repeat(longest + 1);
  return `${fence}headnote\n${text}\n${fence}`;
}
