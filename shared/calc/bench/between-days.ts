// How far the same port reads apart on other days: what repeats within a session cannot show.

import type { RunResult } from "../../model/result.ts";
import { dayOf } from "../calendar.ts";
import { extent } from "../extent.ts";
import type { BenchVisits } from "./bench-visits.ts";

/** The readings of one thing, cell by cell; a cell is one session. */
export type Level = readonly (readonly number[])[];

/** Variances in the square of the readings' unit; `between` is the part of the sessions themselves, never below zero. */
export interface Reproducibility {
  /** Within cells. */
  readonly within: number;
  readonly between: number;
  readonly total: number;
}

/** What the levels of a bench come to, as relative standard deviations. */
export interface BetweenDays {
  readonly deviation: number;
  readonly between: number;
  readonly within: number;
  /** Lifts that were read in more than one session, and the ports and stages that they belong to. */
  readonly levels: number;
  readonly subjects: number;
  readonly sessions: number;
  /** The largest relative range of session means, and where. */
  readonly widest: {
    readonly range: number;
    readonly subject: string;
    readonly lift: number;
    /** One of the runs there. */
    readonly run: RunResult;
  };
}

/**
 * Repeatability and between-laboratory variance of levels together (ISO 5725-2:1994, 7.4.5.1 to 7.4.5.4 for cells of
 * unequal size): sL² = (sd² - sr²)/n̄ with sd² the mean square of the cell means about the level's, n̄ the mean size of
 * cells; levels are pooled by their degrees of freedom. `known` stands for sr² where it is known from elsewhere; without
 * it some cell must have two readings. `undefined` without a level of two cells.
 */
export function reproducibility(levels: readonly Level[], known?: number): Reproducibility | undefined {
  let withinSquares = 0;
  let withinDegrees = 0;
  let betweenSquares = 0;
  let betweenDegrees = 0;
  let sizes = 0;
  for (const level of levels) {
    const cells = level.filter((cell) => cell.length > 0);
    const cellsDegrees = cells.length - 1;
    if (cellsDegrees < 1) continue;
    const count = cells.reduce((sum, cell) => sum + cell.length, 0);
    const centre = cells.flat().reduce((sum, value) => sum + value, 0) / count;
    let squares = 0;
    for (const cell of cells) {
      const mean = cell.reduce((sum, value) => sum + value, 0) / cell.length;
      for (const value of cell) withinSquares += (value - mean) ** 2;
      withinDegrees += cell.length - 1;
      betweenSquares += cell.length * (mean - centre) ** 2;
      squares += cell.length ** 2;
    }
    betweenDegrees += cellsDegrees;
    sizes += count - squares / count;
  }
  const within = known ?? (withinDegrees > 0 ? withinSquares / withinDegrees : undefined);
  if (betweenDegrees === 0 || within === undefined) return undefined;
  const size = sizes / betweenDegrees;
  const between = Math.max(0, (betweenSquares / betweenDegrees - within) / size);
  return { within, between, total: within + between };
}

interface Subject {
  readonly name: string;
  readonly run: RunResult;
  readonly sessions: Map<string, Map<number, readonly number[]>>;
}

/**
 * Reproducibility over the sessions of a bench: the same port, cylinder, stage, lift and direction under the same
 * conditions (target, quote, reference, entry, stub, adapter), each reading as a share of its lift's mean.
 */
export function betweenDays({ visits }: BenchVisits, repeat: number): BetweenDays | undefined {
  const subjects = new Map<string, Subject>();
  for (const { file, date, runs } of visits) {
    for (const run of runs) {
      const key = subjectKey(run);
      if (key === undefined) continue;
      const subject = subjects.get(key) ?? { name: subjectName(run), run, sessions: new Map() };
      subjects.set(key, subject);
      const day = run.setup.date?.value ?? date;
      const session = `${day === undefined ? "" : dayOf(day)} ${file}`;
      const known = subject.sessions.get(session) ?? new Map<number, readonly number[]>();
      subject.sessions.set(session, known);
      for (const { lift, rows } of run.rising) {
        known.set(lift, [...(known.get(lift) ?? []), ...rows.flatMap(({ flow }) => flow?.corrected ?? [])]);
      }
    }
  }
  const shared = [...subjects.values()].filter(({ sessions }) => sessions.size > 1);
  const levels = shared.flatMap(levelsOf);
  const found = reproducibility(
    levels.map(({ cells }) => cells),
    repeat ** 2,
  );
  const widest = levels.reduce<BetweenDays["widest"] | undefined>((most, { cells, lift, subject, run }) => {
    const range = rangeOfMeans(cells);
    return most === undefined || range > most.range ? { range, subject, lift, run } : most;
  }, undefined);
  if (found === undefined || widest === undefined) return undefined;
  return {
    deviation: Math.sqrt(found.total),
    between: Math.sqrt(found.between),
    within: Math.sqrt(found.within),
    levels: levels.length,
    subjects: new Set(levels.map(({ subject }) => subject)).size,
    sessions: new Set(shared.flatMap(({ sessions }) => [...sessions.keys()])).size,
    widest,
  };
}

interface SubjectLevel {
  readonly subject: string;
  readonly run: RunResult;
  readonly lift: number;
  readonly cells: Level;
}

/** The lifts that more than one session has, their readings as shares of the lift's mean of session means. */
function levelsOf({ name, run, sessions }: Subject): readonly SubjectLevel[] {
  const lifts = new Set([...sessions.values()].flatMap((session) => [...session.keys()]));
  return [...lifts].flatMap((lift): readonly SubjectLevel[] => {
    const cells = [...sessions.values()].flatMap((session) => [session.get(lift) ?? []]);
    const read = cells.filter((cell) => cell.length > 0);
    if (read.length < 2) return [];
    const centre = read.reduce((sum, cell) => sum + meanOf(cell), 0) / read.length;
    if (!(centre > 0)) return [];
    return [{ subject: name, run, lift, cells: read.map((cell) => cell.map((value) => value / centre)) }];
  });
}

function rangeOfMeans(cells: Level): number {
  const [least, most] = extent(cells.map(meanOf));
  return most - least;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** What must be alike for two runs to be of the same thing; `undefined` where port or stage is not named. */
function subjectKey({ setup }: RunResult): string | undefined {
  const { port, run, target, quote, reference, entry, stub, adapter, direction } = setup;
  if (port === undefined || run.stage === undefined) return undefined;
  const stubKey = stub === undefined ? "" : stub.value === "none" ? "none" : stub.value.bore.value;
  return JSON.stringify([
    port.id,
    run.cylinder,
    run.stage,
    direction.value,
    target.value.value,
    quote.value.value,
    reference?.value.name,
    entry?.value,
    stubKey,
    adapter?.value.value,
  ]);
}

function subjectName({ setup: { port, run } }: RunResult): string {
  const cylinder = run.cylinder === undefined ? "" : ` ${run.cylinder}`;
  return `${port?.id ?? ""}${cylinder}, ${run.stage ?? ""}`;
}
