// Checks what the product finds in whole records, files and includes together, through the service and nothing below it.
import { expect } from "vitest";
import { memoryFiles } from "../../server/generate/example.ts";
import { type Config, DEFAULT_CONFIG } from "../../server/service/config.ts";
import type { Judged } from "../../server/service/findings.ts";
import { createService } from "../../server/service/service.ts";
import { FIRST_FILE, parseFixture, withMarks } from "./fixture.ts";

/** The findings of one file of a fixture, in the order of its lines. */
export function findingsOf(
  fixture: string,
  path: string = FIRST_FILE,
  config: Config = DEFAULT_CONFIG,
): readonly Judged[] {
  const service = createService({ files: memoryFiles(parseFixture(fixture), "/"), config: () => config });
  const checked = service.check(path);
  if ("problem" in checked) throw new RangeError(`${path}: ${checked.problem}`);
  return checked.findings;
}

/** Checks the complete set of findings of every file of a fixture against the marks under its lines. */
export function checkRecord(fixture: string, config: Config = DEFAULT_CONFIG): void {
  for (const { path, text, marks } of parseFixture(fixture)) {
    const found = findingsOf(fixture, path, config).map(({ finding, severity }) => ({
      ...finding.span,
      code: finding.code,
      severity,
    }));
    expect(withMarks(text, found), path).toBe(withMarks(text, marks));
  }
}

/** The codes of the findings of a fixture's first file, in the order of its lines. */
export function codesOf(fixture: string, config: Config = DEFAULT_CONFIG): readonly string[] {
  return findingsOf(fixture, FIRST_FILE, config).map(({ finding }) => finding.code);
}

/** The only finding of that code. */
export function findingOf(fixture: string, code: string): Judged {
  const found = findingsOf(fixture).filter(({ finding }) => finding.code === code);
  const [only] = found;
  if (only === undefined || found.length !== 1) throw new RangeError(`${found.length} findings of ${code}`);
  return only;
}

/** The parts of a record in which nothing is to be found; each may be given in another form, one line an entry. */
export interface RecordParts {
  readonly bench?: readonly string[];
  readonly port?: readonly string[];
  readonly session?: readonly string[];
  readonly run?: readonly string[];
  readonly head?: string;
  readonly rows: readonly string[];
}

export const BENCH: readonly string[] = ["shows flow", "repeat 0.4 %", "within 0.2 inH2O"];
export const PORT: readonly string[] = [
  "side intake",
  "valve 2.020 in",
  "seat 45 deg width 0.060 in",
  "throat 1.780 in",
  "stem 0.342 in",
];
export const SESSION: readonly string[] = [
  "bench north",
  "port p1",
  "target 28 inH2O",
  "air 20 degC 1000 hPa 40 %RH",
  "leak none",
  "entry radiused",
];
export const HEAD = "lift[in]  depression[inH2O]  flow[cfm]";

/** A record of one run with the rows given (and marks under them, if wanted). */
export function record(parts: RecordParts): string {
  const { bench = BENCH, port = PORT, session = SESSION, run = [], head = HEAD, rows } = parts;
  return [
    "headnote 1",
    "bench north",
    ...bench,
    "port p1",
    ...port,
    "session 2026-03-02",
    ...session,
    "run r1",
    ...run,
    head,
    ...rows,
  ].join("\n");
}
