// Traces and ladders as titles and facts, for the tables that people read.
import type { Quantity } from "../quantity/quantity.ts";
import { ladderFacts } from "./ladder-facts.ts";
import { type Fact, quantityWords } from "./run-facts.ts";
import type { TableInput } from "./table-input.ts";
import { traceFacts } from "./trace-facts.ts";

export interface TableBlock {
  readonly title: string;
  readonly facts: readonly Fact[];
}

/** The file's traces and ladders in the order in which they stand in it. */
export function tableBlocks({ traces = [], ladders = [], wanted }: TableInput): readonly TableBlock[] {
  return [
    ...traces.map(({ line, result }) => ({
      line,
      title: titleOf("trace", result.trace.lift, result.setup.run.id),
      facts: traceFacts(result, wanted),
    })),
    ...ladders.map(({ line, result }) => ({
      line,
      title: titleOf("ladder", result.ladder.lift, result.setup.run.id),
      facts: ladderFacts(result, wanted),
    })),
  ].sort((a, b) => a.line - b.line);
}

/** As its heading writes it. */
export function titleOf(kind: string, lift: Quantity | undefined, run: string): string {
  return [kind, ...(lift === undefined ? [] : [quantityWords(lift)]), "of", run].join(" ");
}
