// Tells whether the cursor stands in a text.

/** Whether a line that is typed so far breaks off between quotes. */
export function isInsideText(typed: string): boolean {
  return (typed.match(/(?<!\\)"/g)?.length ?? 0) % 2 === 1;
}
