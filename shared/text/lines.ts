// Cuts a text into its lines; all three line ends are read, and the first one met is the one that the file uses.

/** The lines of a text without their ends. A text that ends in a line end has an empty last line. */
export function splitLines(text: string): string[] {
  return text.includes("\r") ? text.split(/\r\n|\n|\r/) : text.split("\n");
}

/** The line end that a text uses: its first one, `\n` where it has none. */
export function lineEndOf(text: string): "\n" | "\r\n" | "\r" {
  const match = /\r\n|\n|\r/.exec(text);
  return match?.[0] === "\r\n" ? "\r\n" : match?.[0] === "\r" ? "\r" : "\n";
}

/** Where the lines of a text begin, in order. */
export function lineStarts(text: string): Uint32Array {
  const starts = [0];
  for (const { 0: end, index } of text.matchAll(/\r\n|\n|\r/g)) starts.push(index + end.length);
  return Uint32Array.from(starts);
}

/** Whether a line of a text begins at a place. */
export function isLineStart(text: string, at: number): boolean {
  const end = text[at - 1];
  return at === 0 || end === "\n" || (end === "\r" && text[at] !== "\n");
}

/** How many of some rising numbers are less than a number. */
export function countBelow(rising: Uint32Array, number: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) < number) low = middle + 1;
    else high = middle;
  }
  return low;
}
