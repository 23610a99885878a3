// How far two texts are the same, from either end.

/** How many characters both begin with. */
export function commonStart(a: string, b: string): number {
  return longest(Math.min(a.length, b.length), (length) => a.slice(0, length) === b.slice(0, length));
}

/** How many characters both end with, `most` at most. */
export function commonEnd(a: string, b: string, most: number): number {
  return longest(
    Math.min(a.length, b.length, most),
    (length) => a.slice(a.length - length) === b.slice(b.length - length),
  );
}

/** By halving: to compare two stretches as a whole is far quicker than to look at their characters. */
function longest(most: number, isSame: (length: number) => boolean): number {
  let low = 0;
  let high = most;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (isSame(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}
