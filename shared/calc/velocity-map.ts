// The local speeds of a velocity map, and what they say of the section as a whole.
import type { Row, VelocityMap } from "../model/model.ts";
import { columnValues } from "./column-values.ts";

/** One place of the probe: m across and along the section, m/s. */
export interface MapPoint {
  readonly row: Row;
  readonly x: number;
  readonly y: number;
  readonly speed: number;
}

export interface MapStatistics {
  /** m/s; every place stands for as much of the section as any other. */
  readonly mean: number;
  readonly peak: MapPoint;
  /** 1 where the air is as quick everywhere, towards 0 where it all goes through one place. */
  readonly uniformity: number;
  /** Share of the places whose speed is below half the mean. */
  readonly dead: number;
}

export interface MapResult {
  readonly points: readonly MapPoint[];
  /** Missing without a point that moves. */
  readonly statistics?: MapStatistics;
}

/** Air slower than this share of the mean hardly takes part (common practice, no published source). */
export const DEAD_SHARE = 0.5;

/**
 * Speed in m/s from a probe's dynamic pressure in Pa: sqrt(2 q/rho) (Bernoulli, incompressible: 0.2 % high at 28 m/s,
 * about 1 % at 100 m/s). `density` in kg/m3; none for a pressure below zero.
 */
export function pitotSpeed(pressure: number, density: number): number | undefined {
  const speed = Math.sqrt((2 * pressure) / density);
  return Number.isFinite(speed) ? speed : undefined;
}

/** The places of a map that have a speed; pitot pressures need the density of the air. Void rows do not count. */
export function evaluateMap({ table }: VelocityMap, density: number | undefined): MapResult {
  const [x, y, velocity, pitot] = ["x", "y", "velocity", "pitot"].map((name) => columnValues(table, name));
  const points = (table?.rows ?? []).flatMap((row): MapPoint[] => {
    if (row.void !== undefined) return [];
    const [atX, atY, pressure] = [x?.value(row), y?.value(row), pitot?.value(row)];
    const speed =
      velocity?.value(row) ??
      (pressure === undefined || density === undefined ? undefined : pitotSpeed(pressure, density));
    return atX === undefined || atY === undefined || speed === undefined
      ? []
      : [{ row, x: atX, y: atY, speed }];
  });
  const statistics = statisticsOf(points);
  return { points, ...(statistics !== undefined && { statistics }) };
}

/**
 * Uniformity is 1 - sum|v - mean|/(2 n mean), the index of Weltens and others (SAE 930780, 1993; from memory), each place
 * weighing alike.
 */
function statisticsOf(points: readonly MapPoint[]): MapStatistics | undefined {
  const count = points.length;
  const [first] = points;
  const mean = points.reduce((sum, { speed }) => sum + speed, 0) / count;
  if (first === undefined || !(mean > 0)) return undefined;
  const spread = points.reduce((sum, { speed }) => sum + Math.abs(speed - mean), 0);
  const dead = points.filter(({ speed }) => speed < DEAD_SHARE * mean).length;
  return {
    mean,
    peak: points.reduce((quickest, point) => (point.speed > quickest.speed ? point : quickest), first),
    uniformity: 1 - spread / (2 * count * mean),
    dead: dead / count,
  };
}
