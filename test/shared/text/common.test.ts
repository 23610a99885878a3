import fc from "fast-check";
import { expect, test } from "vitest";
import { commonEnd, commonStart } from "../../../shared/text/common.ts";

const text = fc.string({ unit: fc.constantFrom("a", "b", "\n", "é", "\ud83d", "\ude00"), maxLength: 12 });

test("the same beginning and end of two texts are as long as can be", () => {
  fc.assert(
    fc.property(text, text, text, text, (start, a, b, end) => {
      const [one, other] = [start + a + end, start + b + end];
      let from = 0;
      while (from < Math.min(one.length, other.length) && one[from] === other[from]) from++;
      expect(commonStart(one, other)).toBe(from);
      let to = 0;
      while (to < Math.min(one.length, other.length) && one.at(-1 - to) === other.at(-1 - to)) to++;
      expect(commonEnd(one, other, one.length)).toBe(to);
      expect(commonEnd(one, other, 2)).toBe(Math.min(to, 2));
    }),
  );
});
