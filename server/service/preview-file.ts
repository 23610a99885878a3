// What the preview shows, as a file of its own; the same text or picture as the command gives for the same runs.
import type { PreviewFileAnswer, PreviewFileParams } from "../../shared/messages/preview.ts";
import { chartSpec } from "../../shared/render/chart.ts";
import { numbersCsv, numbersMarkdown } from "../../shared/render/numbers-table.ts";
import { tableCsv } from "../../shared/render/table-csv.ts";
import { tableMarkdown } from "../../shared/render/table-markdown.ts";
import { unitsNamed } from "../../shared/render/wanted-units.ts";
import type { ComputedRun } from "../analysis/project.ts";
import { type BlockPicture, blockPictures } from "./block-pictures.ts";
import { chartOptions } from "./chart-options.ts";
import { type ChartedRecord, chartRuns } from "./chart-runs.ts";
import { chosenPicture, chosenRuns } from "./preview-choice.ts";
import { tableInput } from "./table-input.ts";

/** The file's name without its ending, and its text; nothing where the record has no run. Pictures are on white paper. */
export function previewFile(record: ChartedRecord, wish: Omit<PreviewFileParams, "uri">): PreviewFileAnswer {
  const pictures = blockPictures(record.analysis);
  const picture = chosenPicture(record.analysis, pictures, wish);
  if (picture !== undefined) {
    return { name: fileNameOf(nameOf(record), picture.id), text: pictureText(picture, wish) };
  }
  const picked = chosenRuns(record.analysis, wish);
  if (picked.length === 0) return null;
  const file = nameOf(record);
  return { name: fileName(file, picked, wish), text: textOf(file, record, picked, wish) };
}

function nameOf({ analysis }: ChartedRecord): string {
  return analysis.scope.file.path.split("/").at(-1) ?? "";
}

function pictureText(picture: BlockPicture, { format, units }: Omit<PreviewFileParams, "uri">): string {
  const wanted = unitsNamed(units);
  if (format === "vega-lite") return `${JSON.stringify(picture.spec({ units: wanted }), null, 2)}\n`;
  const table = picture.table(wanted);
  return format === "csv" ? numbersCsv(table, picture.start) : numbersMarkdown(table, picture.facts(wanted));
}

function textOf(
  file: string,
  record: ChartedRecord,
  picked: readonly ComputedRun[],
  wish: Omit<PreviewFileParams, "uri">,
): string {
  const { format, units, choice } = wish;
  if (format === "vega-lite") {
    const spec = chartSpec(chartRuns(record, picked), chartOptions(wish));
    return `${JSON.stringify(spec, null, 2)}\n`;
  }
  const ids = choice.kind === "all" ? [] : picked.map(({ placed }) => placed.entity.id);
  const input = { ...tableInput(file, record, picked, ids), wanted: unitsNamed(units) };
  return format === "csv" ? tableCsv(input) : tableMarkdown(input);
}

/** Named after the record, and the run or the stage where that is not all of it. */
function fileName(
  file: string,
  picked: readonly ComputedRun[],
  { choice }: Omit<PreviewFileParams, "uri">,
): string {
  const part =
    choice.kind === "stage" ? choice.stage : picked.length === 1 ? picked[0]?.placed.entity.id : "";
  return fileNameOf(file, part);
}

/** Of the record and the part of it that is written, with what any disk takes. */
function fileNameOf(file: string, part: string | undefined): string {
  return (
    [file.replace(/\.headnote$/, ""), part]
      .map((text) => (text ?? "").replace(/[^A-Za-z0-9._-]+/g, "-").replace(/^[-.]+|[-.]+$/g, ""))
      .filter((text) => text !== "")
      .join("-")
      .slice(0, 100) || "headnote"
  );
}
