// All findings of one file: of its lines, its blocks, its names and its results, as the workspace weighs them.
import type { PlacedBlock } from "../../grammar/outline.ts";
import { type Made, remade } from "../../shared/difference.ts";
import { type Finding, type Severity, shiftedFinding } from "../../shared/finding.ts";
import type { Limits } from "../../shared/model/limits.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { applyAllows } from "../analysis/allow.ts";
import type { Analysis, SettledRun } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { defined, namesIn } from "../analysis/source-file.ts";
import { type ComputedTrace, tracesOfRun } from "../analysis/traces.ts";
import { CODES, wordsOf } from "../catalogue.ts";
import { JUDGE } from "../rules/judge.ts";
import type { Config } from "./config.ts";
import { judgedPairs } from "./pair-findings.ts";

/** A finding with its words and the weight that the workspace gives it. */
export interface Judged {
  readonly finding: Finding;
  readonly severity: Severity;
  readonly message: string;
  readonly help: string;
}

/** What was found before, as far as it stays true. */
export interface FindingMemory {
  /** In the result of a run without traces, by the limits it was judged by: while the result is the same. */
  readonly results: WeakMap<RunResult, { readonly limits: Limits; readonly findings: readonly Finding[] }>;
  /** In the blocks and runs of a file, where it stands: while block and run are the same and stand there. */
  readonly files: Map<string, JudgedFile>;
}

interface JudgedFile {
  readonly blocks: Made<PlacedBlock, readonly Finding[]>;
  readonly runs: Made<SettledRun, readonly Finding[]>;
  readonly limits: Limits;
  readonly isTraced: boolean;
}

export function findingMemory(): FindingMemory {
  return { results: new WeakMap(), files: new Map() };
}

/**
 * The findings of a file in the order of its lines, each once, without those that a comment or the workspace silences.
 * Results that `memory` knows are not judged again.
 */
export function findingsOf(analysis: Analysis, config: Config, memory?: FindingMemory): readonly Judged[] {
  const { scope, settled, traces } = analysis;
  const { path, outline, text } = scope.file;
  const { limits } = config;
  const before = memory?.files.get(path);
  const ofBlocks = remade(outline.blocks, before?.blocks, ({ start, block }) =>
    placedAt(block.findings, start),
  );
  const ofFile = [...outline.findings, ...joined(ofBlocks), ...JUDGE.file(analysis, limits)];
  const pairs = judgedPairs(analysis, limits);
  // Repeatability that is pooled from all runs changes with any of them, and a trace changes what its run says.
  const isSame = before?.limits === limits && !before.isTraced && traces.length === 0 && !isPooled(scope);
  const ofRuns = remade(settled, isSame ? before.runs : undefined, (run) => {
    const own = tracesOfRun(traces, run.placed);
    return placedAt(findingsOfRun(pairs.resultOf(run), own, limits, memory), run.placed.start);
  });
  memory?.files.set(path, {
    blocks: { of: outline.blocks, to: ofBlocks },
    runs: { of: settled, to: ofRuns },
    limits,
    isTraced: traces.length > 0,
  });
  const ofPairs = pairs.judge().flatMap(({ start, findings }) => placedAt(findings, start));
  // What a file's rules find they may find for many runs; a run's own findings are told apart when they are made.
  const found = [...once(ofFile), ...joined(ofRuns), ...ofPairs];
  // Most files have no such comment, and looking at every line for one would cost more than all else after an edit.
  const kept = text.includes("allow") ? applyAllows(outline.lines, found, CODES) : found;
  return kept
    .flatMap((finding) => worded(finding, config.severity) ?? [])
    .sort((a, b) => inOrder(a.finding, b.finding));
}

/** Whether a bench that the file sees does not state how well it repeats. */
function isPooled({ files }: Scope): boolean {
  return files.some((file) =>
    [...namesIn(file, "bench")].some((id) => {
      const bench = defined(file, "bench", id)?.entity;
      return bench?.kind === "bench" && bench.repeat === undefined;
    }),
  );
}

/** The findings of a run; their spans count from its heading. */
function findingsOfRun(
  result: RunResult,
  traces: readonly ComputedTrace[],
  limits: Limits,
  memory: FindingMemory | undefined,
): readonly Finding[] {
  const known = traces.length === 0 ? memory?.results : undefined;
  const before = known?.get(result);
  if (before?.limits === limits) return before.findings;
  const findings = once(JUDGE.run(result, limits, traces));
  known?.set(result, { limits, findings });
  return findings;
}

const NONE: readonly Finding[] = [];

/** All findings of a list in which nearly every item has none. */
function joined(lists: readonly (readonly Finding[])[]): readonly Finding[] {
  return lists.filter((findings) => findings !== NONE).flat();
}

/** Findings of a block that begins on a line; the same ones again while it stands where it stood. */
const placed = new WeakMap<
  readonly Finding[],
  { readonly start: number; readonly findings: readonly Finding[] }
>();

function placedAt(findings: readonly Finding[], start: number): readonly Finding[] {
  if (findings.length === 0) return NONE;
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
function once(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length < 2) return findings;
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
