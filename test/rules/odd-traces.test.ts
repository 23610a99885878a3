// Whatever stands in a trace, a ladder or a log: findings, and never a fault.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BARE_SESSION } from "../../server/rules/examples.ts";
import { hover } from "../../server/service/hover.ts";
import { tableReportSchema } from "../../shared/messages/report.ts";
import { ladderChart } from "../../shared/render/ladder-chart.ts";
import { tableReport } from "../../shared/render/table-report.ts";
import { tableText } from "../../shared/render/table-text.ts";
import { traceChart } from "../../shared/render/trace-chart.ts";
import { open } from "../kit/service.ts";

const cell = fc.oneof(
  fc.double({ noNaN: true, min: -1e4, max: 1e4 }).map((value) => value.toFixed(2)),
  fc.constantFrom("0.0", "28.0", "28.1", "-", "nan", "1e9", "99999999999999999999", "x", "-0.1"),
);
const table = fc.array(fc.tuple(cell, cell, cell), { maxLength: 60 });
/** Rows that go on in time and mostly hold, so that the analysis runs to its end. */
const holding = fc
  .array(
    fc.tuple(
      fc.double({ noNaN: true, min: 0.001, max: 5 }),
      fc.double({ noNaN: true, min: 0, max: 40 }),
      cell,
    ),
    { minLength: 8, maxLength: 60 },
  )
  .map((rows) => {
    let time = 0;
    return rows.map(([step, depression, flow]) => {
      time += step;
      return [time.toFixed(3), depression.toFixed(2), flow] as const;
    });
  });
const ASKED = `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]  read[s]
     0.500               28.0      195.2      1.0
`;

/** Asks everything of the record that a trace or ladder has a part in. */
function ask(fixture: string, line: string): void {
  const { analysis, findings } = open(fixture);
  // What is no number is quoted as it was written.
  const said = findings.filter(({ finding }) => finding.code !== "number-form");
  for (const { message, help } of said) expect(`${message} ${help}`).not.toMatch(/undefined|NaN|Infinity/);
  const input = {
    file: "main.headnote",
    runs: [],
    plates: [],
    startLine: () => 0,
    findingsOf: () => [],
    traces: analysis.traces.map(({ placed, result }) => ({ line: placed.start, result })),
    ladders: analysis.ladders.map(({ placed, result }) => ({ line: placed.start, result })),
  };
  expect(tableText(input)).not.toMatch(/undefined|NaN|Infinity/);
  expect(tableReportSchema.safeParse(JSON.parse(JSON.stringify(tableReport(input)))).success).toBe(true);
  for (const { result } of analysis.traces)
    expect(JSON.stringify(traceChart(result, { width: 300 }))).not.toContain("null,null");
  for (const { result } of analysis.ladders) ladderChart(result, { width: 300 });
  const at = analysis.scope.file.text.split("\n").findIndex((text) => text.startsWith(line));
  expect(hover(analysis, { line: at, column: 1 })?.text ?? "").not.toMatch(/undefined|NaN/);
}

const rowsOf = (rows: readonly (readonly string[])[]) => rows.map((row) => `  ${row.join("  ")}\n`).join("");

describe("any rows", () => {
  test("of a trace", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(fc.oneof(table, holding), (rows) => {
        ask(
          `${ASKED}trace 0.500 in of r1\n  time[s]  depression[inH2O]  flow[cfm]\n${rowsOf(rows)}`,
          "trace",
        );
      }),
      { numRuns: 150 },
    );
  });

  test("of a ladder", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { maxLength: 20 }), (rows) => {
        ask(`${ASKED}ladder 0.500 in of r1\n  depression[inH2O]  flow[cfm]\n${rowsOf(rows)}`, "ladder");
      }),
      { numRuns: 150 },
    );
  });
});

test("any log", { timeout: 60_000 }, () => {
  const junk = fc.oneof(
    fc.string({ unit: "binary", maxLength: 200 }),
    table.map((rows) => `t,dp,q\n${rows.map((row) => row.join(",")).join("\n")}`),
    table.map((rows) => `t;dp;q\n"s";"inH2O";cfm\n${rows.map((row) => row.join(";")).join("\r\n")}`),
    fc
      .array(fc.constantFrom('"', ",", ";", "\n", "\r", "t", "dp", "q", "\u0000", "1"), { maxLength: 80 })
      .map((parts) => parts.join("")),
  );
  fc.assert(
    fc.property(junk, (log) => {
      // The fixture's own line of a new file must stay the only one.
      const text = log.replaceAll("#-", "#");
      ask(
        `${ASKED}trace 0.500 in of r1\n  log "t.csv" time "t" s depression "dp" inH2O flow "q" cfm\n#- t.csv\n${text}`,
        "trace",
      );
    }),
    { numRuns: 200 },
  );
});
