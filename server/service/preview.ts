// A record as the preview shows it: the picture and all that stands beside it, as plain data.
import type { PreviewParams, PreviewView } from "../../shared/messages/preview.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { type ChartOptions, chartSpec } from "../../shared/render/chart.ts";
import { editorTheme } from "../../shared/render/chart-editor-theme.ts";
import { runFacts } from "../../shared/render/run-facts.ts";
import { unitsNamed } from "../../shared/render/wanted-units.ts";
import type { Analysis, ComputedRun } from "../analysis/project.ts";
import { type ChartedRecord, type ChartedRun, chartRuns } from "./chart-runs.ts";
import type { Judged } from "./findings.ts";
import { blockAt } from "./line-at.ts";
import { chosenRuns, picks } from "./preview-choice.ts";
import { previewTable } from "./preview-table.ts";
import { unitOffers } from "./unit-offers.ts";

/** What a preview is asked to show. */
export type PreviewWish = Omit<PreviewParams, "uri">;

/** A list longer than this is read in the problems panel. */
const MOST_FINDINGS = 100;

/**
 * What the preview shows of a record. Findings are those of the runs shown and of all that is no run's own. `uriOf` gives
 * the files of runs their names as the editor knows them.
 */
export function previewView(
  record: ChartedRecord,
  wish: PreviewWish,
  version: number,
  uriOf: (path: string) => string,
): PreviewView {
  const { analysis } = record;
  const picked = chosenRuns(analysis, wish);
  const shown = chartRuns(record, picked);
  const [lead] = shown;
  const findings = findingsFor(record, picked);
  const wanted = unitsNamed(wish.units);
  const isDrawn = shown.some(({ result }) => hasPoint(result));
  return {
    version,
    name: nameOf(analysis),
    picks: [...picks(analysis)],
    runs: shown.map(({ placed }) => ({
      id: placed.entity.id,
      uri: uriOf(placed.path),
      line: placed.start,
      last: lastLine(analysis, placed),
    })),
    hasRatio: (lead?.result.setup.port?.valve?.value ?? 0) > 0,
    units: lead === undefined ? [] : [...unitOffers(lead.result.setup, wanted)],
    spec: isDrawn ? chartSpec(shown, chartOptions(wish)) : null,
    ...(isDrawn ? { problem: null, isBroken: false } : whyNot(analysis, picked, findings)),
    facts:
      lead === undefined ? [] : runFacts(lead.result, wanted).map(({ label, words }) => ({ label, words })),
    findings: findings.slice(0, MOST_FINDINGS).map(({ finding, severity, message, help }) => ({
      line: finding.span.line,
      severity,
      code: finding.code,
      message,
      help,
    })),
    moreFindings: Math.max(0, findings.length - MOST_FINDINGS),
    tables: inOrder(picked, lead).map((run) => previewTable(run, record.findings, wanted)),
  };
}

function chartOptions({ axis, cd, units, look }: PreviewWish): ChartOptions {
  return { xAxis: axis, cd, units: unitsNamed(units), width: look.width, theme: editorTheme(look.colours) };
}

function nameOf({ scope }: Analysis): string {
  return scope.file.path.split("/").at(-1) ?? "";
}

/** The picked runs, the one that leads the picture first. */
function inOrder(picked: readonly ComputedRun[], lead: ChartedRun | undefined): readonly ComputedRun[] {
  const first = picked.filter(({ result }) => result === lead?.result);
  return [...first, ...picked.filter((run) => !first.includes(run))];
}

function lastLine({ scope }: Analysis, { path, start }: ComputedRun["placed"]): number {
  const outline = scope.files.find((file) => file.path === path)?.outline;
  const length = outline?.blocks.find((placed) => placed.start === start)?.block.lines.length ?? 1;
  return start + length - 1;
}

function hasPoint({ rows }: RunResult): boolean {
  return rows.some(({ lift, flow }) => lift !== undefined && Number.isFinite(flow?.corrected));
}

function findingsFor(
  { analysis, findings }: ChartedRecord,
  picked: readonly ComputedRun[],
): readonly Judged[] {
  const { outline } = analysis.scope.file;
  const shown = new Set(picked.map(({ placed }) => placed.start));
  const runs = new Set(analysis.settled.map(({ placed }) => placed.start));
  return findings.filter(({ finding }) => {
    const start = blockAt(outline, finding.span.line)?.start;
    return start === undefined || shown.has(start) || !runs.has(start);
  });
}

/** Why there is no picture. The text is broken where an error stands in a run that is shown, or where no run is left. */
function whyNot(
  analysis: Analysis,
  picked: readonly ComputedRun[],
  findings: readonly Judged[],
): Pick<PreviewView, "problem" | "isBroken"> {
  const errors = findings.filter(({ severity }) => severity === "error");
  const isIn = ({ finding: { span } }: Judged, from: number): boolean =>
    picked.some(({ placed }) => span.line >= placed.start + from && span.line <= lastLine(analysis, placed));
  // What a heading lacks is missing because of a line below it.
  const blamed =
    errors.find((error) => isIn(error, 1)) ?? errors.find((error) => isIn(error, 0)) ?? errors[0];
  if (blamed !== undefined) {
    return { problem: { text: blamed.message, line: blamed.finding.span.line }, isBroken: true };
  }
  const [run] = picked;
  if (run === undefined) {
    return { problem: { text: "There is no run in this file yet.", line: null }, isBroken: false };
  }
  const isEmpty = picked.every(({ result }) => result.rows.length === 0);
  const text = isEmpty
    ? "No reading yet: a row with a lift and a flow is the first point."
    : "No row gives a lift and a flow, so there is no point to draw.";
  return { problem: { text, line: run.placed.start }, isBroken: false };
}
