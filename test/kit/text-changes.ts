// Random changes of a text, as a person makes them: some letters taken out, others put in.
import fc from "fast-check";
import { brokenText } from "./arbitraries.ts";

export interface TextChange {
  /** How far into the text, of 1. */
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

/** Any change; `words` are put in among others. */
export function textChange(...words: readonly string[]): fc.Arbitrary<TextChange> {
  return fc.record({
    at: fc.oneof({ weight: 5, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) }, fc.constantFrom(0, 1)),
    remove: fc.oneof({ weight: 5, arbitrary: fc.nat(12) }, fc.nat(2000)),
    insert: fc.oneof(
      fc.constantFrom(
        "",
        "\n",
        "\r",
        "\r\n",
        "\n\r",
        '"',
        "#",
        " ",
        "run r9\n",
        "0.1 28\r\n",
        "bench b",
        ...words,
      ),
      brokenText.map((text) => text.slice(0, 40)),
    ),
  });
}

export function changed(text: string, { at, remove, insert }: TextChange): string {
  const from = Math.floor(at * text.length);
  return text.slice(0, from) + insert + text.slice(from + remove);
}
