// Formatting as an editor wants it: the lines that change, and nothing else.
import { formatLines } from "../../grammar/format.ts";
import type { Edit } from "../../shared/text/edit.ts";
import type { SourceFile } from "../analysis/source-file.ts";

/** Edits that bring the lines from `first` to `last` into canonical form; none for a file with conflict markers. */
export function formatEdits(
  { outline }: SourceFile,
  first = 0,
  last = outline.lines.length - 1,
): readonly Edit[] {
  if (outline.conflicted) return [];
  const from = Math.max(0, first);
  const to = Math.min(last, outline.lines.length - 1);
  return formatLines(outline, from, to + 1).flatMap((text, index): Edit[] => {
    const line = from + index;
    const before = outline.lines[line]?.text ?? "";
    return text === before ? [] : [{ span: { line, from: 0, to: before.length }, text }];
  });
}
