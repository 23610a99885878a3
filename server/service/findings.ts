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
import type { FileInput } from "../rules/rule.ts";
import type { Config } from "./config.ts";
import { judgedPairs } from "./pair-findings.ts";

/** A finding with its words and the weight that the workspace gives it. */
export interface Judged {
  readonly finding: Finding;
  readonly severity: Severity;
  readonly message: string;
  readonly help: string;
}

/** What was found in a result, by the limits it was judged by: it stays true while the result is the same. */
export type FindingMemory = WeakMap<
  RunResult,
  { readonly limits: Limits; readonly findings: readonly Finding[] }
>;

/**
 * The findings of a file in the order of its lines, each once, without those that a comment or the workspace silences.
 * Results that `memory` knows are not judged again.
 */
export function findingsOf(analysis: Analysis, config: Config, memory?: FindingMemory): readonly Judged[] {
  const { outline } = analysis.scope.file;
  const all: Finding[] = [...outline.findings];
  for (const { start, block } of outline.blocks) {
    for (const finding of placedAt(block.findings, start)) all.push(finding);
  }
  const { scope, settled, repeatability, compute } = analysis;
  const { limits } = config;
  const input: FileInput = {
    scope,
    runs: settled,
    settled: distinct(settled),
    repeatability,
    compute,
    limits,
    traces: () => analysis.traces,
    ladders: () => analysis.ladders,
  };
  for (const rule of RULES) rule.ofFile?.(input, (finding) => all.push(finding));
  // What a file's rules find they may find for many runs; a run's own findings are told apart when they are made.
  const found = once(all);
  const pairs = judgedPairs(analysis, limits);
  for (const run of settled) {
    const own = runFindings(pairs.resultOf(run), limits, memory);
    for (const finding of placedAt(own, run.placed.start)) found.push(finding);
  }
  for (const { start, findings } of pairs.judge()) {
    for (const finding of placedAt(findings, start)) found.push(finding);
  }
  // Most files have no such comment, and looking at every line for one would cost more than all else after an edit.
  const kept = scope.file.text.includes("allow") ? applyAllows(outline.lines, found, CODES) : found;
  return kept
    .flatMap((finding) => worded(finding, config.severity) ?? [])
    .sort((a, b) => inOrder(a.finding, b.finding));
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

/** The findings of one run; their spans count from its heading. */
function runFindings(
  result: RunResult,
  limits: Limits,
  memory: FindingMemory | undefined,
): readonly Finding[] {
  const before = memory?.get(result);
  if (before?.limits === limits) return before.findings;
  const findings: Finding[] = [];
  for (const rule of RULES) rule.ofRun?.(result, limits, (finding) => findings.push(finding));
  const found = findings.length === 0 ? findings : once(findings);
  memory?.set(result, { limits, findings: found });
  return found;
}

/** Findings of a block that begins on a line; the same ones again while it stands where it stood. */
const placed = new WeakMap<
  readonly Finding[],
  { readonly start: number; readonly findings: readonly Finding[] }
>();

function placedAt(findings: readonly Finding[], start: number): readonly Finding[] {
  if (findings.length === 0) return findings;
  const before = placed.get(findings);
  if (before?.start === start) return before.findings;
  const moved = findings.map((finding) => shiftedFinding(finding, start));
  placed.set(findings, { start, findings: moved });
  return moved;
}

/** Findings with their words, by the weights that they were given; a finding that is kept keeps its words. */
const wordings = new WeakMap<
  Finding,
  { readonly weights: Config["severity"]; readonly judged: Judged | undefined }
>();

/** A finding with its words; `undefined` for one that the workspace has switched off. */
function worded(finding: Finding, weights: Config["severity"]): Judged | undefined {
  const before = wordings.get(finding);
  if (before?.weights === weights) return before.judged;
  const words = wordsOf(finding);
  const severity = weights.get(finding.code) ?? words.severity;
  const judged =
    severity === "off" ? undefined : { finding, severity, message: words.message, help: words.help };
  wordings.set(finding, { weights, judged });
  return judged;
}

/** Two places that share a number only cost a comparison more. */
const MOST_COLUMNS = 1 << 20;
/** Conditions that all runs share are missing once, however many runs there are. */
function once(findings: readonly Finding[]): Finding[] {
  const byPlace = new Map<number, Finding[]>();
  return findings.filter((finding) => {
    const place = finding.span.line * MOST_COLUMNS + finding.span.from;
    const there = byPlace.get(place);
    if (there === undefined) {
      byPlace.set(place, [finding]);
      return true;
    }
    if (there.some((other) => isSame(other, finding))) return false;
    there.push(finding);
    return true;
  });
}

function isSame(a: Finding, b: Finding): boolean {
  return (
    a.code === b.code &&
    a.span.from === b.span.from &&
    a.span.to === b.span.to &&
    JSON.stringify(a.args) === JSON.stringify(b.args)
  );
}

function inOrder(a: Finding, b: Finding): number {
  return (
    a.span.line - b.span.line || a.span.from - b.span.from || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0)
  );
}
