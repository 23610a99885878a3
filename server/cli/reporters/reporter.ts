// The shape of a reporter, and the list of them: a new one is its own file and one line here.
import type { Outcome } from "../outcome.ts";

export interface ReportStyle {
  readonly isColoured: boolean;
}

/** Makes the whole output of `check`, with its last line end. */
export type Reporter = (outcome: Outcome, style: ReportStyle) => string;

/** By the name behind `--format`; each is loaded when it is asked for. */
export const REPORTERS: Readonly<Record<string, () => Promise<Reporter>>> = {
  text: async () => (await import("./text.ts")).textReport,
  json: async () => (await import("./json.ts")).jsonReport,
  sarif: async () => (await import("./sarif.ts")).sarifReport,
  github: async () => (await import("./github.ts")).githubReport,
  junit: async () => (await import("./junit.ts")).junitReport,
  markdown: async () => (await import("./markdown.ts")).markdownReport,
};
