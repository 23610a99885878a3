// What a trace or a ladder gives, on its heading.
import { ladderFacts } from "../../shared/render/ladder-facts.ts";
import type { Fact } from "../../shared/render/run-facts.ts";
import { traceFacts } from "../../shared/render/trace-facts.ts";
import type { Analysis } from "../analysis/project.ts";
import { escaped } from "./markdown.ts";

/** Markdown for the trace or ladder whose heading stands on a line; all text of the record is escaped. */
export function traceHover(analysis: Analysis, line: number): string | undefined {
  const kind = analysis.scope.file.placed.find(({ start }) => start === line)?.entity.kind;
  if (kind === "trace") {
    const found = analysis.traces.find(({ placed }) => placed.start === line);
    return found && listed(traceFacts(found.result));
  }
  if (kind !== "ladder") return undefined;
  const found = analysis.ladders.find(({ placed }) => placed.start === line);
  return found && listed(ladderFacts(found.result));
}

function listed(facts: readonly Fact[]): string {
  return facts.map(({ label, words }) => `- ${label}: ${escaped(words)}`).join("\n");
}
