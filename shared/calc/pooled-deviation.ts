// How well a bench repeats is read off every point that was taken more than once, wherever it stands.

/** A standard deviation and the degrees of freedom it was estimated with. */
export interface PooledDeviation {
  readonly deviation: number;
  readonly degreesOfFreedom: number;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * Standard deviation within cells (readings of one thing, each cell with a mean of its own), in the unit of the
 * readings. `undefined` when no cell has two readings.
 * Source: ISO 5725-2, the repeatability variance as the mean of the cell variances weighted with n - 1.
 */
export function pooledDeviation(cells: readonly (readonly number[])[]): PooledDeviation | undefined {
  let squares = 0;
  let degreesOfFreedom = 0;
  for (const cell of cells) {
    if (cell.length < 2) continue;
    const centre = mean(cell);
    for (const value of cell) squares += (value - centre) ** 2;
    degreesOfFreedom += cell.length - 1;
  }
  if (degreesOfFreedom === 0) return undefined;
  return { deviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/**
 * The same relative to each cell's own mean, as a number (0.01 is 1 %): for readings whose scatter grows with
 * their size. A cell whose mean is not positive is left out.
 * Source: ISO 5725-2, with repeatability proportional to the level.
 */
export function pooledRelativeDeviation(cells: readonly (readonly number[])[]): PooledDeviation | undefined {
  const relative = cells
    .filter((cell) => mean(cell) > 0)
    .map((cell) => {
      const centre = mean(cell);
      return cell.map((value) => value / centre);
    });
  return pooledDeviation(relative);
}
