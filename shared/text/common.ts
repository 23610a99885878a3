// How far two texts are the same, from either end.

/** How many characters both begin with. */
export function commonStart(a: string, b: string): number {
  return longest(Math.min(a.length, b.length), (from, to) => a.slice(from, to) === b.slice(from, to));
}

/** How many characters both end with, `most` at most. */
export function commonEnd(a: string, b: string, most: number): number {
  const [end, other] = [a.length, b.length];
  return longest(
    Math.min(end, other, most),
    (from, to) => a.slice(end - to, end - from) === b.slice(other - to, other - from),
  );
}

/** By halving what is left: to compare two stretches as a whole is far quicker than to look at their characters. */
function longest(most: number, isSame: (from: number, to: number) => boolean): number {
  let low = 0;
  let high = most;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (isSame(low, middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}
