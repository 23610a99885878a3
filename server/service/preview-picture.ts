// A trace, a ladder or a map as the preview shows it.
import { PICTURES, type PreviewView } from "../../shared/messages/preview.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { editorTheme } from "../../shared/render/chart-editor-theme.ts";
import { runFacts } from "../../shared/render/run-facts.ts";
import { unitsNamed } from "../../shared/render/wanted-units.ts";
import type { Analysis } from "../analysis/project.ts";
import type { BlockPicture } from "./block-pictures.ts";
import type { ChartedRecord } from "./chart-runs.ts";
import { blockAt, lastLineOf } from "./line-at.ts";
import type { PreviewWish } from "./preview.ts";
import { listedFindings } from "./preview-findings.ts";
import { MOST_ROWS, numbersTable } from "./preview-table.ts";
import { runAt } from "./row-at.ts";
import { unitOffers } from "./unit-offers.ts";

type PictureView = Omit<PreviewView, "version" | "name" | "picks">;

/** What stands beside a trace, a ladder or a map is what its run stands on. */
export function pictureView(
  record: ChartedRecord,
  picture: BlockPicture,
  pictures: readonly BlockPicture[],
  { units, look }: PreviewWish,
  uriOf: (path: string) => string,
): PictureView {
  const { analysis } = record;
  const { path, outline } = analysis.scope.file;
  const wanted = unitsNamed(units);
  const { name, start, setup, lack } = picture;
  const last = lastLineOf(outline, start);
  const others = new Set(
    [...pictures, ...analysis.settled.map(({ placed }) => placed)].map((each) => each.start),
  );
  const findings = record.findings.filter(({ finding }) => {
    const block = blockAt(outline, finding.span.line)?.start;
    return block === undefined || block === start || !others.has(block);
  });
  const error = findings.find(
    ({ severity, finding: { span } }) => severity === "error" && span.line >= start && span.line <= last,
  );
  const facts = picture.facts(wanted);
  const run = ownerOf(analysis, picture);
  return {
    runs: [{ id: name, uri: uriOf(path), line: start, last }],
    shows: picture.kind,
    hasRatio: false,
    units: setup === undefined ? [] : [...unitOffers(setup, wanted)],
    lifts: null,
    spec:
      lack === undefined
        ? picture.spec({ units: wanted, width: look.width, theme: editorTheme(look.colours) })
        : null,
    problem:
      lack === undefined ? null : { text: error?.message ?? lack, line: error?.finding.span.line ?? start },
    isBroken: lack !== undefined && error !== undefined,
    summary: [...picture.summary(wanted)],
    facts: [...facts, ...(run === undefined ? [] : runFacts(run, wanted))].map(({ label, words }) => ({
      label,
      words,
    })),
    ...listedFindings(findings),
    tables: [numbersTable(picture.table(wanted, MOST_ROWS), start)],
  };
}

/** The result of the run that a picture belongs to, in its own file or in one that it includes. */
function ownerOf(analysis: Analysis, { run: id }: BlockPicture): RunResult | undefined {
  const place = id === undefined ? undefined : analysis.scope.locate("run", id);
  const home = place?.path === analysis.scope.file.path ? analysis : place && analysis.included(place.path);
  const run = home?.settled.find(({ placed }) => placed.start === place?.start);
  return run && home?.compute(run);
}

/**
 * What is told of a trace, ladder or map that was on show and is none any more, since its block, the one at the cursor, has
 * an error: its picture may stay. Nothing where it is simply gone.
 */
export function lostPicture(
  { analysis, findings }: ChartedRecord,
  { choice, line, shown }: PreviewWish,
  uriOf: (path: string) => string,
): PictureView | undefined {
  const { path, outline } = analysis.scope.file;
  const block = line === null ? undefined : blockAt(outline, line);
  const isRun = shown === null || analysis.scope.locate("run", shown) !== undefined;
  if (line === null || block === undefined || isRun || runAt(analysis, line) !== undefined) return undefined;
  if (choice.kind !== "block" && choice.kind !== "cursor") return undefined;
  const last = lastLineOf(outline, block.start);
  const own = findings.filter(({ finding: { span } }) => span.line >= block.start && span.line <= last);
  const error = own.find(({ severity }) => severity === "error");
  if (error === undefined) return undefined;
  return {
    runs: [{ id: shown, uri: uriOf(path), line: block.start, last }],
    // What a trace, a ladder or a map is called begins with what it is.
    shows: PICTURES.find((kind) => shown.startsWith(`${kind} `)) ?? "curve",
    hasRatio: false,
    units: [],
    lifts: null,
    spec: null,
    problem: { text: error.message, line: error.finding.span.line },
    isBroken: true,
    summary: [],
    facts: [],
    ...listedFindings(own),
    tables: [],
  };
}
