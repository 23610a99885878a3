// Every feature at every place of every sample, whole and with pieces missing: it answers, and never throws.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { globSync } from "tinyglobby";
import { describe, expect, test } from "vitest";
import { createProject } from "../../server/analysis/project.ts";
import { velocityMapsOf } from "../../server/analysis/velocity-maps.ts";
import { diskFiles } from "../../server/disk/disk-files.ts";
import { baselines } from "../../server/service/baseline.ts";
import { codeActions, findingsAt, mendAll } from "../../server/service/code-actions.ts";
import { codeLenses } from "../../server/service/code-lens.ts";
import { completion } from "../../server/service/completion.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { definition } from "../../server/service/definition.ts";
import { documentLinks } from "../../server/service/document-links.ts";
import { elsewhereOffers, soughtElsewhere } from "../../server/service/elsewhere-offers.ts";
import { findingsOf } from "../../server/service/findings.ts";
import { folding } from "../../server/service/folding.ts";
import { formatEdits } from "../../server/service/format-edits.ts";
import { hover } from "../../server/service/hover.ts";
import { inlayHints } from "../../server/service/inlay-hints.ts";
import { nextRow } from "../../server/service/on-enter.ts";
import type { Position } from "../../server/service/position.ts";
import { references } from "../../server/service/references.ts";
import { rename } from "../../server/service/rename.ts";
import { selection } from "../../server/service/selection.ts";
import { semanticTokens } from "../../server/service/semantic-tokens.ts";
import { signatureHelp } from "../../server/service/signature-help.ts";
import { symbols } from "../../server/service/symbols.ts";

const FOLDER = join(import.meta.dirname, "../../samples");
const samples = globSync("**/*.headnote", { cwd: FOLDER, absolute: true }).sort();
const disk = diskFiles();
/** What completion may look for names in. */
const neighbours = samples.slice(0, 8).flatMap((path) => {
  const analysis = createProject(disk).analyse(path);
  return "problem" in analysis ? [] : [analysis.scope];
});

function isUpTo(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.column <= b.column);
}

function checkFeatures(path: string, text: string, every: number): void {
  const read = (asked: string) => (asked === path ? { text } : disk.read(asked));
  const project = createProject({ read, root: disk.root });
  const analysis = project.analyse(path);
  if ("problem" in analysis) throw new Error(analysis.problem);
  const { file } = analysis.scope;
  const findings = findingsOf(analysis, DEFAULT_CONFIG);
  const { lines } = file.outline;
  symbols(file);
  folding(file);
  documentLinks(analysis);
  formatEdits(file);
  mendAll(analysis, findings);
  inlayHints(analysis, 0, lines.length, { flow: true, cd: true, gain: true }, () => analysis.runs[0]?.result);
  const included = analysis.scope.files.slice(1).flatMap((other) => {
    const found = project.analyse(other.path);
    return "problem" in found ? [] : [[other.path, found] as const];
  });
  // A misspelt heading opens its block too, so the word on the line may be another.
  const pictures = [...analysis.traces, ...analysis.ladders, ...velocityMapsOf(analysis)];
  const headings = [...analysis.settled, ...pictures].map(({ placed }) => placed.start);
  for (const lens of codeLenses(analysis, baselines(analysis, new Map(included)))) {
    expect(headings).toContain(lens.line);
    expect(lens.title).not.toMatch(/NaN|Infinity|undefined/);
  }
  for (const tokens of semanticTokens(file)) {
    for (const [index, { from, to }] of tokens.entries()) {
      expect(to).toBeGreaterThan(from);
      expect(from).toBeGreaterThanOrEqual(tokens[index - 1]?.to ?? 0);
    }
  }
  let count = 0;
  lines.forEach(({ text: content }, line) => {
    codeActions(analysis, findings, findingsAt(findings, { line, column: 0 }, { line, column: 0 }));
    for (let column = 0; column <= content.length; column++) {
      if (count++ % every !== 0) continue;
      const position = { line, column };
      hover(analysis, position);
      completion(analysis, position, {
        now: "2026-11-25T09:30+01:00",
        paths: samples,
        findings: () => findings,
      });
      const sought = soughtElsewhere(analysis, position);
      if (sought !== undefined) elsewhereOffers(analysis, sought, [analysis.scope, ...neighbours]);
      signatureHelp(analysis, position);
      definition(analysis, position);
      rename(analysis, position, "new-name", [analysis.scope]);
      references(analysis, position, []);
      nextRow(analysis, position);
      const stretches = selection(file, position);
      for (const [index, { start, end }] of stretches.entries()) {
        const inner = stretches[index - 1];
        expect(inner === undefined || (isUpTo(start, inner.start) && isUpTo(inner.end, end))).toBe(true);
        expect(
          start.line < line || (start.line === line && start.column <= column) || content.trim() === "",
        ).toBe(true);
        expect(end.line).toBeGreaterThanOrEqual(line);
      }
    }
  });
}

describe("every feature answers everywhere", () => {
  test.each(samples.map((path) => [path.slice(FOLDER.length + 1), path]))("%s", (_, path) => {
    checkFeatures(path, readFileSync(path, "utf8"), 7);
  });

  test("in a run whose heading is misspelt", () => {
    checkFeatures(
      "/misspelt.headnote",
      "headnote 1\n\niron workhorse-six\n  lift[in]  flow[cfm]\n  0.100     64.2\n",
      1,
    );
  });

  test("in samples with pieces missing", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...samples),
        fc.array(fc.tuple(fc.nat(), fc.nat(60)), { maxLength: 6 }),
        (path, cuts) => {
          let text = readFileSync(path, "utf8");
          for (const [at, length] of cuts) {
            const from = at % (text.length + 1);
            text = text.slice(0, from) + text.slice(from + length);
          }
          checkFeatures(path, text, 61);
        },
      ),
      { numRuns: 40 },
    );
  });
});
