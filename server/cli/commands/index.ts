// The list of commands: a new one is its own file and one line here.
import type { Subcommand } from "../subcommand.ts";
import { bench } from "./bench.ts";
import { chart } from "./chart.ts";
import { check } from "./check.ts";
import { compare } from "./compare.ts";
import { explain } from "./explain.ts";
import { format } from "./format.ts";
import { lsp } from "./lsp.ts";
import { newFile } from "./new.ts";
import { table } from "./table.ts";

export const SUBCOMMANDS: readonly Subcommand[] = [
  check,
  format,
  table,
  chart,
  compare,
  bench,
  newFile,
  explain,
  lsp,
];
