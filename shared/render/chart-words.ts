// The words around a chart: its title, the facts its runs share, how to read it, and what its axes show.
import { mismatches } from "../calc/comparable.ts";
import { areCylinders } from "../calc/cylinders.ts";
import { PORT_AREAS, type PortArea } from "../calc/port-areas.ts";
import type { RunResult } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { type ChartAxes, type ChartRun, type DrawnRun, isFlagged } from "./chart-run.ts";
import { cleanText, HARD_SPACE } from "./chart-text.ts";
import { mismatchWords } from "./mismatch-words.ts";
import { runName } from "./run-name.ts";
import { quantityIn, type WantedUnits } from "./wanted-units.ts";

/** The run's id and title; of cylinders of one stage their numbers, of other runs their ids, the leading one first. */
export function chartTitle(lead: RunResult, runs: readonly ChartRun[]): string {
  const { title } = lead.setup.run;
  const name = runName(lead.setup.run);
  const cylinders = runs.map((run) => run.result.setup.run.cylinder ?? 0).sort((a, b) => a - b);
  if (areCylinders(runs.map((run) => run.result.setup))) return `Cylinders ${ranges(cylinders)}`;
  const others = runs.filter(({ result }) => result !== lead).map(({ result }) => runName(result.setup.run));
  if (others.length === 1) return cleanText(`${name} against ${others[0]}`);
  if (others.length > 1) return cleanText([name, ...others].join(", "));
  return cleanText(title === undefined ? name : `${name}: ${title}`);
}

/** "1 to 4, 6, 8". */
function ranges(numbers: readonly number[]): string {
  const parts: string[] = [];
  for (let at = 0; at < numbers.length; ) {
    const first = numbers[at] ?? 0;
    let length = 1;
    while (numbers[at + length] === first + length) length++;
    if (length > 2) parts.push(`${first} to ${first + length - 1}`);
    else parts.push(...Array.from({ length }, (_, step) => String(first + step)));
    at += length;
  }
  return parts.join(", ");
}

/** What stands behind the numbers, as far as all runs share it. */
export function chartFacts(runs: readonly ChartRun[], wanted: WantedUnits): string {
  const all = runs.map(({ result }) => factsOf(result.setup, wanted));
  const [first = []] = all;
  return listed(first.filter((fact) => all.every((facts) => facts.includes(fact))));
}

function factsOf({ port, run, bench, date, direction, target, head }: Setup, wanted: WantedUnits): string[] {
  const side = port?.side === undefined ? "" : ` (${port.side})`;
  return [
    head?.title ?? head?.id,
    port && `port ${port.id}${side}`,
    run.cylinder === undefined ? undefined : `cylinder ${run.cylinder}`,
    run.stage,
    bench && `bench ${bench.id}`,
    date?.value.slice(0, 10),
    `${direction.value === "draws" ? "drawn" : "blown"} at ${quantityIn(target.value, wanted)}`,
  ].filter((fact) => fact !== undefined);
}

/** What a chart's notes are about. */
export interface Noted {
  readonly drawn: readonly DrawnRun[];
  /** The runs whose points carry bars, and how many of these are longer than their symbols. */
  readonly barred: readonly DrawnRun[];
  readonly bars: number;
  readonly lead: RunResult;
  readonly area: PortArea["name"];
  /** Whether the highest and the lowest of a crowd are drawn in colour. */
  readonly hasExtremes: boolean;
  /** Whether a part of the lift axis is shown. */
  readonly isStretch: boolean;
}

const FALLING = "dotted, hollow: lift coming down";
const FLAGGED = "triangle: flagged";
const VOID = "cross: void";
const STRETCH = "a stretch of the curve: flow need not begin at zero";
const EXTREMES = "in colour: the highest and the lowest in the mean of their differences";

/** What cannot be shown, and how to read the signs that this chart has. */
export function chartNotes(noted: Noted): string {
  const { drawn, barred, area, hasExtremes, isStretch } = noted;
  const points = drawn.flatMap((run) => run.points);
  const pointless = drawn.flatMap((run) =>
    run.points.length > 0 || isStretch ? [] : runName(run.run.result.setup.run),
  );
  const hasLines = drawn.some(({ lines }) => lines.length > 0);
  const isCertain = !barred.some((run) =>
    run.points.some(({ bar, void: gone }) => bar !== undefined && !gone),
  );
  return listed([
    isStretch ? STRETCH : undefined,
    ...readOtherwise(drawn, noted.lead),
    pointless.length > 0 ? `without a point: ${pointless.join(", ")}` : undefined,
    hasLines && drawn.every(({ coefficients }) => coefficients.length === 0) ? missingArea(area) : undefined,
    hasExtremes ? EXTREMES : undefined,
    isCertain ? undefined : uncertaintyNote(noted),
    drawn.some(({ lines }) => lines.some(({ branch }) => branch === "falling")) ? FALLING : undefined,
    points.some((point) => isFlagged(point)) ? FLAGGED : undefined,
    points.some((point) => point.void) ? VOID : undefined,
    crowdNote(noted),
  ]);
}

/** The notes of a chart that has every sign: room for them keeps a picture's height while it is being edited. */
export function fullNotes(noted: Noted): string {
  const uncertainty = noted.barred.length > 0 ? uncertaintyNote({ ...noted, bars: 1 }) : undefined;
  return listed([
    noted.isStretch ? STRETCH : undefined,
    noted.hasExtremes ? EXTREMES : undefined,
    uncertainty,
    FALLING,
    FLAGGED,
    VOID,
    crowdNote(noted),
  ]);
}

function crowdNote({ drawn }: Noted): string | undefined {
  const crowded = drawn.reduce((sum, run) => sum + run.crowded, 0);
  return crowded === 0 ? undefined : `${crowded} points lie among those that are drawn`;
}

/** Runs whose set-up is not that of the leading one have no gain, and are drawn with a word about it. */
function readOtherwise(drawn: readonly DrawnRun[], lead: RunResult): readonly string[] {
  const names = new Map<string, string[]>();
  for (const { run } of drawn) {
    const words = mismatchWords(mismatches(run.result.setup, lead.setup));
    if (words === "") continue;
    const name = runName(run.result.setup.run);
    const others = names.get(words);
    if (others === undefined) names.set(words, [name]);
    else others.push(name);
  }
  return [...names].map(([words, ids]) => `${ids.join(", ")} not read alike: ${words}`);
}

function uncertaintyNote({ drawn, barred, bars, lead }: Noted): string {
  const whose = barred.length < drawn.length ? ` of ${runName(lead.setup.run)}` : "";
  const what = `uncertainty U (k = 2)${whose}`;
  return bars > 0 ? `bars: ${what} where larger than the symbol` : `${what} is smaller than the symbols`;
}

/** In one line that breaks only between its parts. */
export function listed(parts: readonly (string | undefined)[]): string {
  return parts
    .flatMap((part) => (part === undefined ? [] : cleanText(part).replaceAll(" ", HARD_SPACE)))
    .join(`${HARD_SPACE}· `);
}

function missingArea(area: PortArea["name"]): string {
  const needs = PORT_AREAS.find(({ name }) => name === area)?.needs ?? [];
  return `no ${AREA_TITLES[area]}: it takes the port's ${needs.join(", ")}`;
}

/** At which depression and in which air a run's corrected flow stands. */
export function flowConditions({ quote, reference }: Setup, wanted: WantedUnits): string {
  const air = reference === undefined ? "air of the day" : `in ${reference.value.name}`;
  return `at ${quantityIn(quote.value, wanted)}, ${air}`;
}

/** The label of a run, with its conditions where they are not those of the leading run. */
export function endLabel(run: ChartRun, lead: RunResult, wanted: WantedUnits): string {
  const conditions = flowConditions(run.result.setup, wanted);
  const label = run.label === "" ? runName(run.result.setup.run) : run.label;
  return cleanText(conditions === flowConditions(lead.setup, wanted) ? label : `${label} (${conditions})`);
}

export function liftTitle(axes: ChartAxes): string {
  return axes.ratio ? "Lift over valve diameter, L/D" : `Valve lift, ${axes.lift.symbol}`;
}

export const AREA_TITLES: Readonly<Record<PortArea["name"], string>> = {
  curtain: "Cd on the curtain area",
  gap: "Cd on the gap area",
  throat: "Cd on the throat area",
  head: "Cd on the valve head's area",
};
