// Makes the pages of benches from the texts of records, as the command does.

import { createProject } from "../../server/analysis/project.ts";
import { benchPages } from "../../server/cli/bench-pages.ts";
import { memoryFiles } from "../../server/generate/example.ts";
import type { BenchPage } from "../../shared/render/bench-text.ts";

/** The pages of all benches in the records, by path. */
export function pagesOf(records: Readonly<Record<string, string>>): readonly BenchPage[] {
  const files = Object.entries(records).map(([path, text]) => ({ path, text }));
  const project = createProject(memoryFiles(files, ""));
  const benches = benchPages();
  for (const { path } of files) {
    const analysis = project.analyse(path);
    if (!("problem" in analysis)) benches.add(path, analysis);
  }
  return benches.pages();
}

/** The only page. */
export function pageOf(records: Readonly<Record<string, string>>): BenchPage {
  const pages = pagesOf(records);
  const [page] = pages;
  if (page === undefined || pages.length !== 1)
    throw new RangeError(`one bench is wanted, not ${pages.length}`);
  return page;
}

export interface SessionParts {
  readonly date?: string;
  readonly session?: readonly string[];
  readonly blocks: string;
}

export const BENCH_SHOP = `headnote 1
bench north
  shows      flow
  repeat     0.4 %
  settle     1.5 s
  quick      2.0 s
plate p1
  flow       200 cfm at 28 inH2O
  uncertainty 0.5 %
port in
  side       intake
port ex
  side       exhaust
`;

/** A session on the bench of the shop above, in a record of its own. */
export function benchSession({ date, session, blocks }: SessionParts): string {
  return [
    "headnote 1",
    'include "shop.headnote"',
    `session ${date ?? "2026-03-02"}`,
    "bench north",
    "port in",
    "target 28 inH2O",
    ...(session ?? ["leak none"]),
    blocks,
  ].join("\n");
}
