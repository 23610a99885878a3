// The list of reporters: a new one is its own file and one line here.
import { githubReport } from "./github.ts";
import { jsonReport } from "./json.ts";
import { junitReport } from "./junit.ts";
import { markdownReport } from "./markdown.ts";
import type { Reporter } from "./reporter.ts";
import { sarifReport } from "./sarif.ts";
import { textReport } from "./text.ts";

/** By the name behind `--format`. */
export const REPORTERS: Readonly<Record<string, Reporter>> = {
  text: textReport,
  json: jsonReport,
  sarif: sarifReport,
  github: githubReport,
  junit: junitReport,
  markdown: markdownReport,
};
