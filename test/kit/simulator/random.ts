// Chance that begins from a seed, so that every simulation gives the same numbers on every machine.
import { seededNormals } from "../../shared/calc/seeded-normals.ts";

/** Gives the next standard normal number. */
export type Normal = () => number;

export function normals(seed: number): Normal {
  const endless = seededNormals(seed);
  return () => endless.next().value;
}
