// How often a port that is truly flat is said to fall back, which is what the statistics promise to be 5 % of sweeps.
import { flatDropQuantile, studentFlatDropQuantile } from "../../shared/calc/flat-drop.ts";
import { widening } from "../../shared/calc/repeatability.ts";
import { type Rate, rateOf } from "../kit/binomial.ts";
import { type JudgedRun, judgeRecord } from "../kit/simulator/judged.ts";
import { type Normal, normals } from "../kit/simulator/random.ts";
import { benchBlock, runBlock, sessionBlock } from "../kit/simulator/record.ts";
import { BAND, flatReading, RUNS_A_RECORD, TARGET } from "./settings.ts";

const NOISE = 0.004;
const FLOW = 0.1;

/** Readings at each station of a flat sweep, in the order of the stations. */
export type Repeats = readonly number[];

export interface FalseAlarms {
  readonly what: string;
  readonly rate: Rate;
}

/** The repeatability is known, and every station is read once. */
export function knownAlarms(sweeps: number): readonly FalseAlarms[] {
  return Array.from({ length: 11 }, (_, index) => index + 2).map((stations) => ({
    what: String(stations),
    rate: alarmsOfKnown(
      Array.from({ length: stations }, () => 1),
      sweeps,
      100 + stations,
    ),
  }));
}

/** The repeatability is known, and stations are read more or less often. */
export function unequalAlarms(sweeps: number): readonly FalseAlarms[] {
  const patterns: readonly Repeats[] = [
    [1, 3],
    [3, 1],
    [1, 1, 5],
    [5, 1, 1],
  ];
  return patterns.flatMap((pattern, index) =>
    [4, 8, 12].map((stations) => ({
      what: `${stations}, read ${pattern.join(", ")}, …`,
      rate: alarmsOfKnown(repeated(pattern, stations), sweeps, 200 + 20 * index + stations),
    })),
  );
}

function repeated(pattern: Repeats, stations: number): Repeats {
  return Array.from({ length: stations }, (_, index) => pattern[index % pattern.length] ?? 1);
}

function alarmsOfKnown(repeats: Repeats, sweeps: number, seed: number): Rate {
  const normal = normals(seed);
  let alarms = 0;
  for (let done = 0; done < sweeps; done += RUNS_A_RECORD) {
    const runs = Array.from({ length: Math.min(RUNS_A_RECORD, sweeps - done) }, (_, index) =>
      flatRun(`r${index}`, "known", repeats, normal),
    );
    const bench = benchBlock("known", { repeat: NOISE, within: BAND });
    const judged = judgeRecord(`headnote 1\n${bench}${session()}${runs.join("")}`);
    alarms += judged.filter(fallsBack).length;
  }
  return rateOf(alarms, sweeps);
}

export interface PooledAlarms {
  readonly stations: number;
  readonly readings: number;
  readonly degreesOfFreedom: number;
  readonly rate: Rate;
  /** What the normal limit widened by t/z, the usual shortcut, would have said of the same sweeps. */
  readonly shortcut: Rate;
}

/** The repeatability is pooled from the sweep's own repeats: each sweep has a bench that states none. */
export function pooledAlarms(sweeps: number): readonly PooledAlarms[] {
  const designs: readonly (readonly [stations: number, readings: number])[] = [
    [4, 2],
    [6, 2],
    [8, 2],
    [12, 2],
    [6, 3],
    [12, 3],
  ];
  return designs.map(([stations, readings], index) => {
    const degreesOfFreedom = stations * (readings - 1);
    const normal = normals(300 + index);
    const repeats = Array.from({ length: stations }, () => readings);
    const normalLimit = flatDropQuantile(stations) ?? Number.NaN;
    const limit = studentFlatDropQuantile(stations, degreesOfFreedom) ?? Number.NaN;
    const wide = widening({ deviation: NOISE, source: "pooled", degreesOfFreedom });
    let alarms = 0;
    let shortcut = 0;
    for (let done = 0; done < sweeps; done += RUNS_A_RECORD) {
      const count = Math.min(RUNS_A_RECORD, sweeps - done);
      const blocks = Array.from(
        { length: count },
        (_, run) => benchBlock(`b${run}`, { within: BAND }) + flatRun(`r${run}`, `b${run}`, repeats, normal),
      );
      for (const run of judgeRecord(`headnote 1\n${session()}${blocks.join("")}`)) {
        if (run.result.repeatability.degreesOfFreedom !== degreesOfFreedom)
          throw new RangeError("not pooled");
        if (fallsBack(run)) alarms += 1;
        const falls = run.result.fallBacks.map(({ clearest }) => (clearest.drop / clearest.chance) * limit);
        if (falls.some((units) => units > normalLimit * wide)) shortcut += 1;
      }
    }
    return {
      stations,
      readings,
      degreesOfFreedom,
      rate: rateOf(alarms, sweeps),
      shortcut: rateOf(shortcut, sweeps),
    };
  });
}

function fallsBack({ codes }: JudgedRun): boolean {
  return codes.has("fall-back");
}

function flatRun(id: string, bench: string, repeats: Repeats, normal: Normal): string {
  const readings = repeats.flatMap((count, station) =>
    Array.from({ length: count }, () => flatReading(station, FLOW * (1 + NOISE * normal()))),
  );
  return runBlock(id, bench, readings);
}

function session(): string {
  return sessionBlock({ target: TARGET, leak: 0, hasPort: false });
}
