// The tables of RESULTS.md are what the simulator says today. `UPDATE=1` writes them anew.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { rateOf } from "../kit/binomial.ts";
import { resultsPage, SECTIONS, type Section, USUAL } from "./results.ts";

const PAGE = join(import.meta.dirname, "RESULTS.md");
const TIME = 240_000;

const sections: Section[] = [];
const numberOf = (cell: string | undefined) => Number(cell?.split(" ")[0]) / 100;

/** Whether 5 % lies in the exact 99.9 % interval of a rate that so many trials gave. */
function promises(cell: string | undefined, trials: number): boolean {
  const { low, high } = rateOf(Math.round(numberOf(cell) * trials), trials, 0.999);
  return low <= 0.05 && 0.05 <= high;
}

describe("the simulations", () => {
  test("run", { timeout: TIME }, () => {
    for (const section of SECTIONS) sections.push(section(USUAL));
    expect(sections.length).toBe(SECTIONS.length);
  });

  test("say what RESULTS.md says", () => {
    const page = resultsPage(sections);
    if (process.env["UPDATE"] === "1") writeFileSync(PAGE, page);
    else expect(page).toBe(readFileSync(PAGE, "utf8"));
  });
});

describe("the statistics keep their promise", () => {
  const rows = (title: RegExp) => sections.find((section) => title.test(section.title))?.rows ?? [];

  test("of 5 % for a known repeatability, at every number of stations and over all", () => {
    const known = rows(/fall-back, repeatability known/);
    expect(known).toHaveLength(11);
    for (const [stations, rate] of known)
      expect(promises(rate, USUAL.known), `${stations}: ${rate}`).toBe(true);
    const all = known.reduce((sum, [, rate]) => sum + numberOf(rate), 0) / known.length;
    expect(promises(`${100 * all} %`, USUAL.known * known.length)).toBe(true);
  });

  test("of 5 % at most where stations are read unequally often", () => {
    for (const [what, rate] of rows(/unequally often/)) {
      const { low } = rateOf(Math.round(numberOf(rate) * USUAL.unequal), USUAL.unequal, 0.999);
      expect(low, what).toBeLessThanOrEqual(0.05);
    }
  });

  test("of 5 % for a pooled one, which the limit widened by t/z does not", () => {
    const pooled = rows(/pooled from the sweep/);
    for (const [stations, , degrees, rate] of pooled) {
      expect(promises(rate, USUAL.pooled), `${stations} stations, ${degrees} degrees: ${rate}`).toBe(true);
    }
    expect(pooled.some(([, , , , , shortcut]) => !promises(shortcut, USUAL.pooled))).toBe(true);
  });

  test("of 5 % for single differences", () => {
    for (const [code, what, rate] of rows(/single differences/)) {
      if (what === "ten lifts on both ways") continue;
      expect(promises(rate, USUAL.other), `${code}: ${rate}`).toBe(true);
    }
  });
});

describe("what is said of two benches and of traces keeps its target of 5 %", () => {
  const rows = (title: RegExp) => sections.find((section) => title.test(section.title))?.rows ?? [];
  /** Whether a rate of 5 % or less may have given what was counted. */
  function checkTarget(cell: string | undefined, trials: number, what: string): void {
    const { low } = rateOf(Math.round(numberOf(cell) * trials), trials, 0.999);
    expect(low, `${what}: ${cell}`).toBeLessThanOrEqual(0.05);
  }

  test("where both benches show a fall-back, and where neither does", () => {
    const both = rows(/both benches show/);
    expect(both).toHaveLength(6);
    for (const [noise, repeats, ...cells] of both)
      for (const cell of cells) checkTarget(cell, USUAL.hidden, `${noise}, ${repeats}`);
    for (const [time, , stable] of rows(/by the other bench/))
      checkTarget(stable, USUAL.hiddenBySpeed, `${time} s`);
  });

  test("in traces of a stable port, however their noise hangs together", () => {
    const alarms = rows(/in a trace: false alarms/);
    expect(alarms).toHaveLength(4);
    for (const [samples, ...cells] of alarms)
      for (const cell of cells) checkTarget(cell, USUAL.letGoAlarms, `${samples} samples`);
  });

  test("for readings that were taken late, and for early ones that are as good", () => {
    for (const [what, moment, early, useless] of rows(/taken early/)) {
      const isLate = moment?.includes("settled") === true;
      if (isLate) checkTarget(early, USUAL.early, `${what}, ${moment}`);
      else expect(numberOf(early)).toBe(1);
      if (what?.startsWith("nothing") === true) checkTarget(useless, USUAL.early, `${what}, ${moment}`);
      else if (what?.includes("lets go") === true && !isLate) expect(numberOf(useless)).toBeGreaterThan(0.9);
    }
  });
});

describe("what a practitioner expects", () => {
  const rows = (title: RegExp) => sections.find((section) => title.test(section.title))?.rows ?? [];

  test("larger drops, steadier benches and more readings are never found less often, but for chance", () => {
    const shares = rows(/^Detection/).map((row) => row.slice(2).map(numberOf));
    expect(shares).toHaveLength(12);
    for (const line of shares) {
      for (let i = 1; i < line.length; i++) expect(line[i]).toBeGreaterThan((line[i - 1] ?? 0) - 0.25);
      expect(line.at(-1)).toBeGreaterThanOrEqual(line[0] ?? 1);
    }
    const column = (index: number) => shares.map((line) => line[index] ?? Number.NaN);
    const four = column(0).filter((_, index) => index % 3 === 2);
    const once = column(0).filter((_, index) => index % 3 === 0);
    expect(Math.min(...four.map((share, index) => share - (once[index] ?? 0)))).toBeGreaterThan(-0.05);
    expect(once[0]).toBeGreaterThan((once[3] ?? 1) + 0.5);
  });

  test("what a slow bench hides is found where the drop is clear, and a clear step in a trace", () => {
    for (const [noise, repeats, ...cells] of rows(/other bench hides/))
      expect(numberOf(cells.at(-1)), `${noise}, ${repeats}`).toBeGreaterThan(0.8);
    const steps = rows(/in a trace: detection/).filter(([time]) => time !== "0.3");
    expect(steps).toHaveLength(6);
    for (const row of steps) expect(numberOf(row.at(-1)), row.slice(0, 3).join()).toBeGreaterThan(0.9);
  });

  test("a quick bench shows the fall-back, a slow one is asked about its flat top, a stable port is left alone", () => {
    const speeds = rows(/bench's speed/);
    const first = speeds[0]?.map(numberOf) ?? [];
    const last = speeds.at(-1)?.map(numberOf) ?? [];
    expect(first[2]).toBe(1);
    expect(first[3]).toBe(0);
    expect(last[2]).toBeLessThan(0.15);
    expect(last[3]).toBeGreaterThan(0.85);
    for (const [, , , , nothing, fallBack, flatTop] of speeds) {
      expect(numberOf(nothing)).toBeLessThan(0.05);
      expect(numberOf(fallBack)).toBeLessThan(0.05);
      expect(numberOf(flatTop)).toBe(0);
    }
  });
});
