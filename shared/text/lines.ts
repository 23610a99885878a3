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
