// The samples show what the README promises: they read, they are in canonical form, and only what they say is found.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { globSync } from "tinyglobby";
import { describe, expect, test } from "vitest";
import { format } from "../grammar/format.ts";
import { outline } from "../grammar/outline.ts";
import { readLines } from "../grammar/read-lines.ts";
import { diskFiles } from "../server/disk/disk-files.ts";
import { DEFAULT_CONFIG } from "../server/service/config.ts";
import { createService } from "../server/service/service.ts";
import { evaluateRuns } from "../shared/calc/evaluate.ts";
import { portArea } from "../shared/calc/port-areas.ts";

const FOLDER = join(import.meta.dirname, "../samples");
const files = globSync("**/*.headnote", { cwd: FOLDER }).sort();
const service = createService({ files: diskFiles(), config: () => DEFAULT_CONFIG });

/** What the samples mean to show, each named in a comment of its file. */
const INTENDED: Readonly<Record<string, readonly string[]>> = {
  "bench-checks/2026-09-05-plate.headnote": ["plate-off"],
  "bench-checks/2026-10-17-old-plate.headnote": ["plate-overdue"],
  "first.headnote": ["fall-back"],
  "ironside-eight/2026-03-07-as-cast.headnote": ["fall-back", "let-go"],
  "ironside-eight/2026-03-08-as-cast-cabinet.headnote": ["flat-top", "hidden-fall-back"],
  "ironside-eight/2026-03-14-as-cast-up-and-down.headnote": ["fall-back", "direction-dependent"],
  "ironside-eight/2026-03-21-short-side.headnote": ["fall-back-not-resolved"],
  "ironside-eight/2026-04-12-blended-approaches.headnote": ["read-early"],
  "ironside-eight/2026-04-13-ladder.headnote": ["ladder-exponent"],
  "ironside-eight/2026-05-16-exhaust-as-cast.headnote": ["off-target"],
  "ironside-eight/2026-10-03-back-again.headnote": ["repeats-disagree"],
  "lantern-four/2026-10-24-all-exhausts.headnote": ["cylinders-apart"],
  "lantern-four/2026-11-07-orifice-bench.headnote": ["no-result"],
};

function checked(file: string) {
  const found = service.check(join(FOLDER, file));
  if ("problem" in found) throw new Error(`${file}: ${found.problem}`);
  return found;
}

const textOf = (file: string) => readFileSync(join(FOLDER, file), "utf8");

describe.each(files)("%s", (file) => {
  test("has the findings that its comments name, and no others", () => {
    const codes = checked(file).findings.map(({ finding }) => finding.code);
    expect(codes).toEqual(INTENDED[file] ?? []);
    for (const code of codes) expect(textOf(file)).toMatch(new RegExp(`#.*${code}`));
  });

  test("is in canonical form", () => {
    expect(format(textOf(file))).toBe(textOf(file));
  });

  test("says the same with any line ends", () => {
    const meaning = (text: string) =>
      JSON.stringify(outline(readLines(text)).blocks.map(({ block }) => block.entity));
    const expected = meaning(textOf(file));
    for (const end of ["\r\n", "\r"]) expect(meaning(textOf(file).replaceAll("\n", end))).toBe(expected);
  });

  test("has flows that ports have: below the geometric limit, and within the theoretical ceiling of its gap", () => {
    for (const { result } of checked(file).analysis.runs) {
      for (const { lift, effectiveArea } of result.rows) {
        const { port } = result.setup;
        if (port === undefined || lift === undefined || effectiveArea === undefined || lift === 0) continue;
        const gap = portArea("gap", port, lift) ?? Number.POSITIVE_INFINITY;
        expect(effectiveArea / gap).toBeGreaterThan(0.4);
        expect(effectiveArea / gap).toBeLessThan(1);
      }
    }
  });
});

test("the shop's records are as many and as various as the README needs", () => {
  const sessions = files.filter((file) => checked(file).analysis.scope.file.session !== undefined);
  expect(sessions.length).toBeGreaterThanOrEqual(10);
  const runs = sessions.flatMap((file) => checked(file).analysis.runs);
  expect(new Set(runs.map(({ result }) => result.setup.bench?.shows?.kind)).size).toBeGreaterThanOrEqual(3);
  expect(new Set(runs.map(({ result }) => result.setup.port?.side))).toEqual(new Set(["intake", "exhaust"]));
  expect(runs.some(({ result }) => result.falling.length > 0)).toBe(true);
  expect(runs.some(({ result }) => result.rows.some(({ row }) => row.void !== undefined))).toBe(true);
});

test("the results of a file do not depend on when its runs were asked for", () => {
  const { analysis } = checked("ironside-eight/2026-04-11-bowl-blend.headnote");
  const again = evaluateRuns(analysis.settled.map(({ setup }) => setup));
  expect(again).toEqual(analysis.runs.map(({ result }) => result));
});
