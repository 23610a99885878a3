import { expect, test } from "vitest";
import { replaced } from "../../shared/difference.ts";

test("items take the place of others, however many they are", () => {
  expect(replaced([1, 2, 3, 4], 1, 3, [7])).toEqual([1, 7, 4]);
  const many = Array.from({ length: 300_000 }, (_, index) => index);
  expect(replaced([-1, -2], 1, 1, many)).toEqual([-1, ...many, -2]);
});
