// `headnote table`: prints the results of a record's runs.

import { tableCsv } from "../../../shared/render/table-csv.ts";
import type { TableInput } from "../../../shared/render/table-input.ts";
import { tableMarkdown } from "../../../shared/render/table-markdown.ts";
import { tableReport } from "../../../shared/render/table-report.ts";
import { tableText } from "../../../shared/render/table-text.ts";
import { tableInput } from "../../service/table-input.ts";
import { FINE, UNUSABLE } from "../exit-code.ts";
import { openRecord } from "../open-record.ts";
import { pickRuns } from "../pick-runs.ts";
import { listOption, type Subcommand, textOption } from "../subcommand.ts";
import { UNIT_OPTION, unitsAsked } from "../unit-option.ts";

/** By the name behind `--format`. */
const FORMATS: Readonly<Record<string, (input: TableInput) => string>> = {
  text: tableText,
  json: (input) => `${JSON.stringify(tableReport(input), null, 2)}\n`,
  csv: tableCsv,
  markdown: tableMarkdown,
};

export const table: Subcommand = {
  name: "table",
  args: "<file>",
  summary: "print corrected flow, coefficients and uncertainty of every point",
  examples: [
    ["headnote table a114/as-cast.headnote", "all runs, traces and ladders of a record"],
    ["headnote table as-cast.headnote --run i3", "one of them"],
    ["headnote table as-cast.headnote --unit mm --unit L/s", "in other units than it was written in"],
    ["headnote table as-cast.headnote --format csv > flow.csv", "for a spreadsheet"],
  ],
  options: [
    { flags: "--run <id>", about: "only this run; may be repeated", isRepeatable: true },
    {
      flags: "--format <format>",
      about: "how the table is set",
      choices: Object.keys(FORMATS),
      preset: "text",
    },
    UNIT_OPTION,
  ],
  run: async (call, io) => {
    const wanted = unitsAsked(call, io);
    if (wanted === undefined) return UNUSABLE;
    const record = await openRecord(call.args[0] ?? "", io);
    const runs = record && pickRuns(record, listOption(call, "run"), io);
    if (record === undefined || runs === undefined) return UNUSABLE;
    const ids = listOption(call, "run");
    const input = { ...tableInput(record.shown, record, runs, ids), wanted };
    io.out(FORMATS[textOption(call, "format") ?? ""]?.(input) ?? "");
    return FINE;
  },
};
