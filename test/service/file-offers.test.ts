import { describe, expect, test } from "vitest";
import { logColumns } from "../../server/analysis/log-file.ts";
import { completion } from "../../server/service/completion.ts";
import { open } from "../kit/service.ts";

const LOGS = ["heads/traces/i3.csv", "traces/i3-0500.csv", "traces/i3.csv"];
const LOG = "Logger 4,rev b\n\nt,dp (inH2O),q\ns,inH2O,cfm\n0.0,0.1,0.2\n0.1,0.3,0.4\n";

function labels(line: string, above = ""): readonly string[] {
  const { analysis, position } = open(`headnote 1\nrun a\n${above}trace 0.3 in of a\n${line}\n`);
  const context = { now: "2026-11-25T09:30+01:00", paths: LOGS, log: LOG, findings: () => [] };
  return completion(analysis, position, context).map(({ label }) => label);
}

describe("in a log line", () => {
  test("the logs of the workspace are offered, but for those that other traces name", () => {
    expect(labels('  log "$0"')).toEqual(["traces/i3.csv", "traces/i3-0500.csv", "heads/traces/i3.csv"]);
    const other = 'trace 0.5 in of a\n  log "traces/i3.csv" time "t" s depression "dp" Pa\n';
    expect(labels('  log "traces/i3.csv$0"', other)).toEqual(["traces/i3-0500.csv", "heads/traces/i3.csv"]);
  });

  test("the columns of the log are offered, each once", () => {
    expect(labels('  log "traces/i3.csv" time "$0"')).toEqual(["t", "dp (inH2O)", "q"]);
    expect(labels('  log "traces/i3.csv" time "t" s depression "$0"')).toEqual(["dp (inH2O)", "q"]);
  });
});

describe("the columns of a log", () => {
  test.each([
    ["t;dp;q\n0,1;2,5;3\n", ["t", "dp", "q"]],
    ["a,b\nt\tdp\n1\t2\n", ["t", "dp"]],
    ["time,dp\n[s],[Pa]\n1,2\n", ["time", "dp"]],
    ["1,2\n3,4\n", []],
    ["no log at all\n", []],
    ["", []],
  ])("of %j", (text, names) => {
    expect(logColumns(text)).toEqual(names);
  });
});
