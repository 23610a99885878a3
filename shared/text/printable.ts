// Keeps what a record contains from steering the terminal or the page that it is shown on.

/** A text of one line in which every character that would act instead of being shown stands as `\uXXXX`. */
export function printable(text: string): string {
  // Control characters (C0, DEL, C1), the marks that turn the direction of writing, and the other line ends. To build this
  // set takes as long as some rules, so it waits until something is printed.
  return text.replace(
    /[\p{Cc}\p{Bidi_C}\u2028\u2029]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
