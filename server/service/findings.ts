// All findings of one file: of its lines, its blocks, its names and its results, as the workspace weighs them.
import { type Finding, type Severity, shiftedFinding } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { applyAllows } from "../analysis/allow.ts";
import type { Analysis } from "../analysis/project.ts";
import { CODES, wordsOf } from "../catalogue.ts";
import { RULES } from "../rules/index.ts";
import type { Config } from "./config.ts";

/** A finding with its words and the weight that the workspace gives it. */
export interface Judged {
  readonly finding: Finding;
  readonly severity: Severity;
  readonly message: string;
  readonly help: string;
}

/** The findings of a file in the order of its lines, each once, without those that a comment or the workspace silences. */
export function findingsOf(analysis: Analysis, config: Config): readonly Judged[] {
  const { outline } = analysis.scope.file;
  const all: Finding[] = [...outline.findings];
  for (const { start, block } of outline.blocks) {
    for (const finding of block.findings) all.push(shiftedFinding(finding, start));
  }
  const { scope, settled, repeatability } = analysis;
  const input = { scope, settled, repeatability, limits: config.limits };
  for (const rule of RULES) rule.ofFile?.(input, (finding) => all.push(finding));
  for (const run of settled) {
    for (const finding of runFindings(analysis.compute(run), config.limits)) {
      all.push(shiftedFinding(finding, run.placed.start));
    }
  }
  const kept = applyAllows(outline.lines, once(all), CODES);
  return kept
    .flatMap((finding): Judged[] => {
      const words = wordsOf(finding);
      const severity = config.severity.get(finding.code) ?? words.severity;
      return severity === "off" ? [] : [{ finding, severity, message: words.message, help: words.help }];
    })
    .sort((a, b) => byPlace(a.finding, b.finding));
}

/** What was found in a result, by the limits it was judged by: it stays true while the result is the same. */
const judged = new WeakMap<RunResult, { readonly limits: Limits; readonly findings: readonly Finding[] }>();

/** The findings of one run; their spans count from its heading. */
function runFindings(result: RunResult, limits: Limits): readonly Finding[] {
  const before = judged.get(result);
  if (before?.limits === limits) return before.findings;
  const findings: Finding[] = [];
  for (const rule of RULES) rule.ofRun?.(result, limits, (finding) => findings.push(finding));
  judged.set(result, { limits, findings });
  return findings;
}

/** Conditions that all runs share are missing once, however many runs there are. */
function once(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ code, span, args }) => {
    const key = `${code} ${span.line} ${span.from} ${span.to} ${JSON.stringify(args)}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function byPlace(a: Finding, b: Finding): number {
  return (
    a.span.line - b.span.line || a.span.from - b.span.from || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0)
  );
}
