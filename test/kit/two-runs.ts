// Records of two runs of one port, for whatever lays one over the other.
import type { RunResult } from "../../shared/model/result.ts";
import { evaluateText } from "./evaluate.ts";

export interface RunParts {
  /** Lines of the run, one an entry. */
  readonly lines?: readonly string[];
  /** Lift, flow and, where it was timed, settle time; lifts in the unit of the head. */
  readonly points: readonly (readonly [lift: number | string, flow: number, settle?: number | undefined])[];
  readonly bench?: "north" | "south";
}

export interface TwoRuns {
  readonly north?: readonly string[];
  readonly south?: readonly string[];
  readonly session?: readonly string[];
  readonly unit?: string;
  readonly factor?: number;
}

export const BENCH_LINES: readonly string[] = ["shows flow", "repeat 0.4 %", "uncertainty 1 %"];

/** The text of a record with two benches and these runs, `r1`, `r2` … , of one stage. */
export function runsText(runs: readonly RunParts[], options: TwoRuns = {}): string {
  const { north = BENCH_LINES, south = BENCH_LINES, session = [], unit = "cfm", factor = 1 } = options;
  return [
    "headnote 1",
    "bench north",
    ...north,
    "bench south",
    ...south,
    "port p1",
    "side intake",
    "valve 2.020 in",
    "seat 45 deg width 0.060 in",
    "throat 1.780 in",
    "stem 0.342 in",
    "session 2026-03-02",
    "port p1",
    "target 28 inH2O",
    "reference isa",
    "air 20 degC 1000 hPa 40 %RH",
    "leak none",
    "entry clay",
    ...session,
    ...runs.flatMap(({ lines = [], points, bench = "north" }, index) => [
      `run r${index + 1}`,
      `bench ${bench}`,
      'stage "as cast"',
      ...lines,
      `lift[in] depression[inH2O] flow[${unit}] settle[s]`,
      ...points.map(([lift, flow, settle]) => `${lift} 28.00 ${(flow * factor).toFixed(4)} ${settle ?? "-"}`),
    ]),
  ].join("\n");
}

/** The results of two runs. */
export function twoRuns(
  first: RunParts,
  second: RunParts,
  options: TwoRuns = {},
): readonly [RunResult, RunResult] {
  const [a, b] = evaluateText(runsText([first, second], options)).runs;
  if (a === undefined || b === undefined) throw new RangeError("two runs are wanted");
  return [a, b];
}
