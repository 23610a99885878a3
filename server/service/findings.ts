// All findings of one file: of its lines, its blocks, its names and its results, as the workspace weighs them.
import { hasOwnConditions } from "../../shared/calc/setup.ts";
import { type Finding, type Severity, shiftedFinding } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { Bench, Port } from "../../shared/model/model.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { applyAllows } from "../analysis/allow.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
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
  const input = { scope, settled: distinct(settled), repeatability, limits: config.limits };
  for (const rule of RULES) rule.ofFile?.(input, (finding) => all.push(finding));
  for (const run of settled) {
    for (const finding of runFindings(analysis.compute(run), config.limits)) {
      all.push(shiftedFinding(finding, run.placed.start));
    }
  }
  // Most files have no such comment, and looking at every line for one would cost more than all else after an edit.
  const found = once(all);
  const kept = scope.file.text.includes("allow") ? applyAllows(outline.lines, found, CODES) : found;
  return kept
    .flatMap((finding): Judged[] => {
      const words = wordsOf(finding);
      const severity = config.severity.get(finding.code) ?? words.severity;
      return severity === "off" ? [] : [{ finding, severity, message: words.message, help: words.help }];
    })
    .sort((a, b) => byPlace(a.finding, b.finding));
}

/**
 * One run of each set of conditions: what a file's rules find in the conditions of one they find in those of all that
 * stand on the same things and state nothing of their own.
 */
function distinct(settled: readonly SettledRun[]): readonly SettledRun[] {
  const met = new Map<Bench | undefined, Set<Port | undefined>>();
  return settled.filter(({ setup, placed }) => {
    const { run, bench, port } = setup;
    if (hasOwnConditions(run) || placed.entity.table === undefined) return true;
    if (run.table?.rows.length === 0) return true;
    const ports = met.get(bench) ?? new Set();
    met.set(bench, ports);
    return ports.has(port) ? false : ports.add(port);
  });
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
