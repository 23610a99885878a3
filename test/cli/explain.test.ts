import { expect, test } from "vitest";
import { TOPICS } from "../../server/cli/topics/index.ts";

test("every explanation ends with its line, and no blank one behind it", () => {
  for (const { words, explain } of TOPICS) {
    for (const word of words)
      expect([word, explain(word)]).toEqual([word, expect.stringMatching(/[^\n]\n$/)]);
  }
});
