// What can be folded away: blocks, and comments of several lines.
import type { SourceFile } from "../analysis/source-file.ts";
import { symbols } from "./symbols.ts";

export interface Fold {
  readonly first: number;
  readonly last: number;
  readonly isComment: boolean;
}

export function folding(file: SourceFile): readonly Fold[] {
  const blocks = symbols(file)
    .map(({ lines: [first, last] }) => ({ first, last, isComment: false }))
    .filter(({ first, last }) => last > first);
  return [...blocks, ...comments(file)];
}

function comments({ outline }: SourceFile): readonly Fold[] {
  const found: Fold[] = [];
  let first: number | undefined;
  const { lines } = outline;
  for (let index = 0; index <= lines.length; index++) {
    const isComment =
      lines[index]?.kind === "blank" && lines[index]?.text.trimStart().startsWith("#") === true;
    if (isComment) first ??= index;
    else {
      if (first !== undefined && index - first > 1) found.push({ first, last: index - 1, isComment: true });
      first = undefined;
    }
  }
  return found;
}
