// How far the cylinders of one head flow apart, lift by lift, and how much of that the bench could have made up.
import type { RowResult, RunResult } from "../model/result.ts";
import { isReadAlike } from "./comparable.ts";
import { isSameLift } from "./gain.ts";
import { rangeQuantile } from "./range-of-normals.ts";
import { widening } from "./repeatability.ts";

/** The rising readings of one cylinder at one lift, averaged over all of its runs. */
export interface CylinderFlow {
  readonly cylinder: number;
  /** Corrected flow, m3/s. */
  readonly flow: number;
  readonly readings: number;
  /** The first of the readings, and its run. */
  readonly row: RowResult;
  readonly result: RunResult;
}

/** The cylinders at one lift. */
export interface CylinderSpread {
  /** m */
  readonly lift: number;
  readonly lowest: CylinderFlow;
  readonly highest: CylinderFlow;
  readonly cylinders: number;
  /** Between highest and lowest, relative to the mean of all cylinders at this lift. */
  readonly difference: number;
  /** What the two furthest of as many equal cylinders differ by at most in 95 % of cases, relative. */
  readonly chance: number;
}

/**
 * The lifts at which two cylinders or more were read, by rising lift; `results` are runs of one stage of one port on one
 * bench. The two furthest of k cylinders are told apart by the range of k normals times s sqrt((1/n1 + 1/n2)/2), which is
 * 1.96 s sqrt(1/n1 + 1/n2) for two; s is widened by t/z where it is pooled. Source: Tukey's test with Kramer's form for
 * unequal numbers, Biometrics 12 (1956) 307-310.
 */
export function cylinderSpreads(results: readonly RunResult[]): readonly CylinderSpread[] {
  const [first] = results;
  if (first === undefined) return [];
  const alike = results.filter(({ setup }) => isReadAlike(setup, first.setup));
  const deviation = first.repeatability.deviation * widening(first.repeatability);
  return lifts(alike).flatMap((lift): readonly CylinderSpread[] => {
    const flows = cylindersAt(alike, lift);
    const byFlow = [...flows].sort((a, b) => a.flow - b.flow);
    const [lowest, highest] = [byFlow[0], byFlow.at(-1)];
    const range = rangeQuantile(flows.length);
    if (lowest === undefined || highest === undefined || range === undefined || !(lowest.flow > 0)) return [];
    const mean = flows.reduce((sum, { flow }) => sum + flow, 0) / flows.length;
    const chance = range * deviation * Math.sqrt((1 / lowest.readings + 1 / highest.readings) / 2);
    const difference = (highest.flow - lowest.flow) / mean;
    return [{ lift, lowest, highest, cylinders: flows.length, difference, chance }];
  });
}

function lifts(results: readonly RunResult[]): readonly number[] {
  const all = results.flatMap(({ rising }) => rising.map(({ lift }) => lift)).sort((a, b) => a - b);
  return all.filter((lift, index) => !isSameLift(lift, all[index - 1]));
}

function cylindersAt(results: readonly RunResult[], lift: number): readonly CylinderFlow[] {
  const found = new Map<number, CylinderFlow>();
  for (const result of results) {
    const { cylinder } = result.setup.run;
    const station = result.rising.find((each) => isSameLift(each.lift, lift));
    const row = station?.rows[0];
    if (cylinder === undefined || station === undefined || row === undefined) continue;
    const before = found.get(cylinder);
    const count = station.rows.length;
    const readings = (before?.readings ?? 0) + count;
    const flow = ((before?.flow ?? 0) * (before?.readings ?? 0) + station.flow * count) / readings;
    found.set(cylinder, { row, result, ...before, cylinder, flow, readings });
  }
  return [...found.values()];
}
