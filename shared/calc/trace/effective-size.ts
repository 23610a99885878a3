// Samples taken quickly hang together: a mean of many is worth fewer independent ones.

/**
 * How many independent values a mean of these is worth: n / (1 + 2 sum of autocorrelations), summed over neighbouring
 * pairs of lags while their sum is positive. From 1 to n; n for values that do not differ.
 * Source: C. J. Geyer, Practical Markov chain Monte Carlo, Statistical Science 7 (1992) 473-483, initial positive sequence.
 */
export function effectiveSize(values: Float64Array): number {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const off = values.map((value) => value - mean);
  const variance = covariance(off, 0);
  if (count < 2 || !(variance > 0)) return count;
  let sum = -variance;
  for (let lag = 0; lag + 1 < count; lag += 2) {
    const pair = covariance(off, lag) + covariance(off, lag + 1);
    if (pair <= 0) break;
    sum += 2 * pair;
  }
  return Math.min(count, Math.max(1, (count * variance) / sum));
}

function covariance(off: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < off.length; i++) sum += (off[i] ?? 0) * (off[i - lag] ?? 0);
  return sum / off.length;
}

/** Autocorrelation of neighbours; 0 for values that do not differ. */
export function neighbourCorrelation(off: Float64Array): number {
  const variance = covariance(off, 0);
  return variance > 0 ? covariance(off, 1) / variance : 0;
}
