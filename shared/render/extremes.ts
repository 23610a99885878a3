// Thins a long series for drawing so that nothing that stands out is lost.

/**
 * Indices to draw of `values` from `from` up to `to`, in order: all of them where they are few, else of each of `buckets`
 * equal stretches the first, the least, the greatest and the last. Values that are NaN are left out.
 */
export function extremes(values: Float64Array, from: number, to: number, buckets: number): readonly number[] {
  const found: number[] = [];
  if (to - from <= 4 * buckets) {
    for (let at = from; at < to; at++) if (!Number.isNaN(values[at])) found.push(at);
    return found;
  }
  for (let bucket = 0; bucket < buckets; bucket++) {
    const start = from + Math.floor(((to - from) * bucket) / buckets);
    const end = from + Math.floor(((to - from) * (bucket + 1)) / buckets);
    let [first, last, least, most] = [-1, -1, -1, -1];
    for (let at = start; at < end; at++) {
      const value = values[at] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      if (first < 0) [first, least, most] = [at, at, at];
      last = at;
      if (value < (values[least] ?? value)) least = at;
      if (value > (values[most] ?? value)) most = at;
    }
    if (first < 0) continue;
    found.push(...new Set([first, least, most, last].sort((a, b) => a - b)));
  }
  return found;
}
