// What can be folded away: blocks, includes, and comments of several lines.
import type { SourceFile } from "../analysis/source-file.ts";
import { symbols } from "./symbols.ts";

export interface Fold {
  readonly first: number;
  readonly last: number;
  readonly kind: "block" | "includes" | "comment";
}

export function folding(file: SourceFile): readonly Fold[] {
  const blocks = symbols(file)
    .map(({ lines: [first, last] }) => ({ first, last, kind: "block" as const }))
    .filter(({ first, last }) => last > first);
  return [...blocks, ...includes(file), ...comments(file)];
}

function includes({ outline }: SourceFile): readonly Fold[] {
  const lines = new Set(outline.includes.map(({ span }) => span.line));
  const found = stretches(outline.lines.length, (index) => lines.has(index));
  return found.map((fold) => ({ ...fold, kind: "includes" }));
}

function comments({ outline: { lines } }: SourceFile): readonly Fold[] {
  const isComment = (index: number): boolean =>
    lines[index]?.kind === "blank" && lines[index]?.text.trimStart().startsWith("#") === true;
  return stretches(lines.length, isComment).map((fold) => ({ ...fold, kind: "comment" }));
}

/** Stretches of two or more lines that are alike. */
function stretches(count: number, isAlike: (index: number) => boolean): readonly Omit<Fold, "kind">[] {
  const found: Omit<Fold, "kind">[] = [];
  let first: number | undefined;
  for (let index = 0; index <= count; index++) {
    if (index < count && isAlike(index)) first ??= index;
    else {
      if (first !== undefined && index - first > 1) found.push({ first, last: index - 1 });
      first = undefined;
    }
  }
  return found;
}
