// Makes few values of many: means of neighbours, so that what is costly stays small however long a trace is.

/** How many neighbours to take together so that `count` values become at most `most`. */
export function groupSize(count: number, most: number): number {
  return Math.max(1, Math.ceil(count / most));
}

/** Means of groups of `size` neighbours from `from` up to `to`; the last group may be smaller, values that are NaN do not count. */
export function groupMeans(values: Float64Array, from: number, to: number, size: number): Float64Array {
  if (size === 1) return values.slice(from, to);
  const means = new Float64Array(Math.ceil((to - from) / size));
  for (let group = 0; group < means.length; group++) {
    const first = from + group * size;
    const end = Math.min(first + size, to);
    let sum = 0;
    let count = 0;
    for (let i = first; i < end; i++) {
      const value = values[i] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      count++;
    }
    means[group] = count === 0 ? Number.NaN : sum / count;
  }
  return means;
}
