// Takes the text of a simulated record through the real service, run by run.
import { createProject } from "../../../server/analysis/project.ts";
import { memoryFiles } from "../../../server/generate/example.ts";
import { DEFAULT_CONFIG } from "../../../server/service/config.ts";
import { findingsOf } from "../../../server/service/findings.ts";
import type { RunResult } from "../../../shared/model/result.ts";

export interface JudgedRun {
  readonly id: string;
  readonly codes: ReadonlySet<string>;
  /** What the last finding of each code says. */
  readonly messages: ReadonlyMap<string, string>;
  readonly result: RunResult;
}

const PATH = "simulated.headnote";

/** The runs of a record with the codes of the findings that stand in their blocks, or in blocks below that are of them. */
export function judgeRecord(text: string): readonly JudgedRun[] {
  const analysis = createProject(memoryFiles([{ path: PATH, text }], "")).analyse(PATH);
  if ("problem" in analysis) throw new RangeError(analysis.problem);
  const messages = analysis.runs.map(() => new Map<string, string>());
  for (const { finding, message } of findingsOf(analysis, DEFAULT_CONFIG)) {
    const at = analysis.runs.findLastIndex(({ placed }) => placed.start <= finding.span.line);
    messages[at]?.set(finding.code, message);
  }
  return analysis.runs.map(({ placed, result }, index) => ({
    id: placed.entity.id,
    codes: new Set(messages[index]?.keys()),
    messages: messages[index] ?? new Map(),
    result,
  }));
}
