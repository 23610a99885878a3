// A record as the preview shows it: the picture and all that stands beside it, as plain data.
import type { PreviewParams, PreviewView } from "../../shared/messages/preview.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { type ChartOptions, drawnChart } from "../../shared/render/chart.ts";
import { editorTheme } from "../../shared/render/chart-editor-theme.ts";
import { sharedFacts } from "../../shared/render/shared-facts.ts";
import { sharedSummary } from "../../shared/render/shared-summary.ts";
import { unitsNamed } from "../../shared/render/wanted-units.ts";
import type { Analysis, ComputedRun } from "../analysis/project.ts";
import { blockPictures } from "./block-pictures.ts";
import { chartOptions } from "./chart-options.ts";
import { type ChartedRecord, type ChartedRun, chartRuns } from "./chart-runs.ts";
import type { Judged } from "./findings.ts";
import { blockAt, lastLineOf } from "./line-at.ts";
import { chosenPicture, chosenRuns, picks } from "./preview-choice.ts";
import { listedFindings } from "./preview-findings.ts";
import { lostPicture, pictureView } from "./preview-picture.ts";
import { previewTable } from "./preview-table.ts";
import { unitOffers } from "./unit-offers.ts";

/** What a preview is asked to show. */
export type PreviewWish = Omit<PreviewParams, "uri">;

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
  const pictures = blockPictures(analysis);
  const picture = chosenPicture(analysis, pictures, wish);
  const common = { version, name: nameOf(analysis), picks: [...picks(analysis, pictures)] };
  if (picture !== undefined) return { ...common, ...pictureView(record, picture, pictures, wish, uriOf) };
  const lost = lostPicture(record, wish, uriOf);
  if (lost !== undefined) return { ...common, ...lost };
  const picked = chosenRuns(analysis, wish);
  const shown = chartRuns(record, picked);
  const [lead] = shown;
  const findings = findingsFor(record, picked);
  const wanted = unitsNamed(wish.units);
  const named = picked.map(({ result }) => ({ result, label: labelIn(shown, result) }));
  const tables = inOrder(picked, lead).map((run) => previewTable(run, record.findings, wanted));
  const isDrawn = shown.some(({ result }) => hasPoint(result));
  const drawn = isDrawn ? drawnChart(shown, pictureOptions(wish)) : undefined;
  return {
    ...common,
    runs: shown.map(({ placed }) => ({
      id: placed.entity.id,
      uri: uriOf(placed.path),
      line: placed.start,
      last: lastLine(analysis, placed),
    })),
    shows: "curve",
    hasRatio: (lead?.result.setup.port?.valve?.value ?? 0) > 0,
    units: lead === undefined ? [] : [...unitOffers(lead.result.setup, wanted)],
    lifts: drawn?.lifts ?? null,
    spec: drawn?.spec ?? null,
    ...(isDrawn ? { problem: null, isBroken: false } : whyNot(analysis, picked, findings)),
    summary: named.length > 1 ? [...sharedSummary(named, wanted)] : (tables[0]?.summary ?? []),
    facts: [...sharedFacts(named, wanted)],
    ...listedFindings(findings),
    tables,
  };
}

function pictureOptions(wish: PreviewWish): ChartOptions {
  const { width, colours } = wish.look;
  return { ...chartOptions(wish), width, theme: editorTheme(colours) };
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
  return outline === undefined ? start : lastLineOf(outline, start);
}

/** What a run is called in the picture. */
function labelIn(shown: readonly ChartedRun[], result: RunResult): string {
  return shown.find((run) => run.result === result)?.label ?? result.setup.run.id;
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
