// The traces, ladders and maps of a record as pictures of their own, each with its numbers and words.
import type { LadderResult } from "../../shared/model/ladder-result.ts";
import type { Setup } from "../../shared/model/setup.ts";
import type { TraceResult } from "../../shared/model/trace-result.ts";
import type { VegaLiteSpec } from "../../shared/render/chart-shell.ts";
import type { ChartTheme } from "../../shared/render/chart-theme.ts";
import { ladderChart } from "../../shared/render/ladder-chart.ts";
import { ladderFacts, ladderSummary } from "../../shared/render/ladder-facts.ts";
import { ladderTable } from "../../shared/render/ladder-table.ts";
import { mapSpec } from "../../shared/render/map-chart.ts";
import { mapFacts, mapName, mapSummary } from "../../shared/render/map-facts.ts";
import { mapTable } from "../../shared/render/map-table.ts";
import type { NumbersTable } from "../../shared/render/numbers-table.ts";
import type { Fact } from "../../shared/render/run-facts.ts";
import { titleOf } from "../../shared/render/table-blocks.ts";
import { traceChart } from "../../shared/render/trace-chart.ts";
import { traceFacts, traceSummary } from "../../shared/render/trace-facts.ts";
import { traceTable } from "../../shared/render/trace-table.ts";
import type { WantedUnits } from "../../shared/render/wanted-units.ts";
import type { Analysis } from "../analysis/project.ts";
import { type ComputedMap, velocityMapsOf } from "../analysis/velocity-maps.ts";

export interface PictureOptions {
  readonly width?: number;
  readonly theme?: ChartTheme;
  readonly units: WantedUnits;
}

/** One trace, ladder or map. */
export interface BlockPicture {
  readonly kind: "trace" | "ladder" | "map";
  /** What it is called in the record: alone, unless two are called alike. */
  readonly id: string;
  /** What its marks are counted in. */
  readonly name: string;
  /** The line that its block begins on. */
  readonly start: number;
  /** The id of the run that it belongs to. */
  readonly run: string | undefined;
  readonly setup: Setup | undefined;
  /** Why there is nothing to draw; missing where there is. */
  readonly lack?: string;
  readonly spec: (options: PictureOptions) => VegaLiteSpec;
  /** Of many rows so many that tell the most, unless all are asked for. */
  readonly table: (wanted: WantedUnits, most?: number) => NumbersTable;
  readonly facts: (wanted: WantedUnits) => readonly Fact[];
  /** What a reader is told first. */
  readonly summary: (wanted: WantedUnits) => readonly string[];
}

/** The pictures of a record's own blocks, in order. */
export function blockPictures(analysis: Analysis): readonly BlockPicture[] {
  const found = [
    ...analysis.traces.map(({ placed, result }) => tracePicture(placed.start, result)),
    ...analysis.ladders.map(({ placed, result }) => ladderPicture(placed.start, result)),
    ...velocityMapsOf(analysis).map((map) => mapPicture(analysis, map)),
  ].sort((a, b) => a.start - b.start);
  const seen = new Map<string, number>();
  return found.map((picture) => {
    const count = (seen.get(picture.name) ?? 0) + 1;
    seen.set(picture.name, count);
    const name = picture.name.slice(0, LONGEST_ID);
    return { ...picture, id: count === 1 ? name : `${name} (${count})` };
  });
}

/** A title may be as long as it likes, what is chosen by it may not. */
const LONGEST_ID = 200;

type Unnumbered = Omit<BlockPicture, "id">;

function tracePicture(start: number, result: TraceResult): Unnumbered {
  const { trace, setup, interval } = result;
  return {
    kind: "trace",
    name: titleOf("trace", trace.lift, setup.run.id),
    start,
    run: setup.run.id,
    setup,
    ...(interval === 0 && { lack: "No sample of this trace can be used." }),
    spec: (options) => traceChart(result, options),
    table: (wanted, most) => traceTable(result, wanted, most),
    facts: (wanted) => traceFacts(result, wanted),
    summary: (wanted) => traceSummary(result, wanted),
  };
}

function ladderPicture(start: number, result: LadderResult): Unnumbered {
  const { ladder, setup, law } = result;
  return {
    kind: "ladder",
    name: titleOf("ladder", ladder.lift, setup.run.id),
    start,
    run: setup.run.id,
    setup,
    ...(law === undefined && { lack: "No power to draw: fewer than three steps can be used." }),
    spec: (options) => ladderChart(result, options),
    table: (wanted) => ladderTable(result, wanted),
    facts: (wanted) => ladderFacts(result, wanted),
    summary: () => ladderSummary(result),
  };
}

function mapPicture({ settled }: Analysis, { placed: { entity, start }, result }: ComputedMap): Unnumbered {
  const run = entity.of?.id;
  return {
    kind: "map",
    name: mapName(entity),
    start,
    run,
    setup: settled.find(({ placed }) => placed.entity.id === run)?.setup,
    ...(result.statistics === undefined && { lack: "No place to draw: no row gives x, y and a speed." }),
    spec: (options) => mapSpec(entity, result, options),
    table: (wanted) => mapTable(entity, result, wanted),
    facts: (wanted) => mapFacts(entity, result, wanted),
    summary: (wanted) => mapSummary(entity, result, wanted),
  };
}
