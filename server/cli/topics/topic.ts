// The shape of what `explain` can speak of.

export interface Topic {
  /** What its words are, for the list of all of them. */
  readonly title: string;
  /** All words that it explains, in the order of the list. */
  readonly words: readonly string[];
  /** The explanation of a word, with its last line end; `undefined` for words that it does not know. */
  readonly explain: (word: string) => string | undefined;
}

const INDENT = "    ";

/** A text of several lines as it stands below a line of prose. */
export function indented(text: string): string {
  return text
    .trimEnd()
    .split("\n")
    .map((line) => (INDENT + line).trimEnd())
    .join("\n");
}
