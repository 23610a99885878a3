// Finds what a misspelt word was probably meant to be, for keywords, names and units alike.

/**
 * Number of single-letter mistakes between two words: insertions, deletions, replacements and swaps of neighbours, no
 * letter being touched twice (the restricted Damerau-Levenshtein distance; CACM 7 (1964) 171, for the four
 * kinds of mistake). Counts UTF-16 units; time and memory grow with the product of the lengths.
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      const replaced = at(last, j - 1) + (same ? 0 : 1);
      let least = Math.min(at(last, j) + 1, at(row, j - 1) + 1, replaced);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, at(beforeLast, j - 2) + 1);
      }
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.POSITIVE_INFINITY;
}

/**
 * The candidates within `maxDistance` mistakes of a word, the fewest mistakes first, ties in the order of the list. Upper
 * and lower case count as equal. Unless stated, at most two mistakes and never more than half of the word's letters, so
 * that a single letter has only itself as its nearest.
 */
export function nearest(
  word: string,
  candidates: readonly string[],
  maxDistance: number = Math.min(2, Math.floor(word.length / 2)),
): readonly string[] {
  const lower = word.toLowerCase();
  return candidates
    .filter((candidate) => Math.abs(candidate.length - word.length) <= maxDistance)
    .map((candidate) => ({ candidate, distance: editDistance(lower, candidate.toLowerCase()) }))
    .filter(({ distance }) => distance <= maxDistance)
    .sort((a, b) => a.distance - b.distance)
    .map(({ candidate }) => candidate);
}
