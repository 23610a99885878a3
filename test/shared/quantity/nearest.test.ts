// The words offered for a misspelt one are near, in a fixed order, and cheap to find.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { editDistance, nearest } from "../../../shared/quantity/nearest.ts";

const shortWord = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 7 });

describe("the distance of two words", () => {
  test.each([
    ["", "", 0],
    ["", "lift", 4],
    ["bench", "bench", 0],
    ["bench", "bnech", 1],
    ["bench", "benh", 1],
    ["bench", "bbench", 1],
    ["bench", "bemch", 1],
    ["ca", "abc", 3],
  ])("between '%s' and '%s' is %i", (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  test("is symmetric, zero only for equal words, and no more than the longer one", () => {
    fc.assert(
      fc.property(shortWord, shortWord, (a, b) => {
        const distance = editDistance(a, b);
        expect(editDistance(b, a)).toBe(distance);
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(distance).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
    );
  });

  test("is one for a single mistake of each kind", () => {
    fc.assert(
      fc.property(shortWord, fc.nat(), (word, n) => {
        const i = n % (word.length + 1);
        expect(editDistance(word, `${word.slice(0, i)}x${word.slice(i)}`)).toBe(1);
        if (i < word.length) expect(editDistance(word, `${word.slice(0, i)}x${word.slice(i + 1)}`)).toBe(1);
        const swapped =
          word.slice(0, i) + word.slice(i + 1, i + 2) + word.slice(i, i + 1) + word.slice(i + 2);
        expect(editDistance(word, swapped)).toBe(swapped === word ? 0 : 1);
      }),
    );
  });
});

describe("the nearest words", () => {
  test("come best first, ties in the order of the list", () => {
    expect(nearest("lifft", ["left", "lift", "gift", "drift"])).toEqual(["lift", "left", "gift"]);
    expect(nearest("seet", ["seat", "sect", "seed"])).toEqual(["seat", "sect", "seed"]);
    expect(nearest("seet", ["sect", "seat", "seed"])).toEqual(["sect", "seat", "seed"]);
  });

  test("take upper and lower case as equal", () => {
    expect(nearest("BENCH", ["bench"])).toEqual(["bench"]);
  });

  test("are none for a short word that shares too little", () => {
    expect(nearest("x", ["y"])).toEqual([]);
    expect(nearest("ab", ["xy"])).toEqual([]);
    expect(nearest("", ["in"])).toEqual([]);
  });

  test("keep to a given distance", () => {
    expect(nearest("depression", ["depresion", "depresin"], 1)).toEqual(["depresion"]);
  });

  test("are found at once for a word of any length", () => {
    expect(nearest("a".repeat(1_000_000), ["adapter"])).toEqual([]);
  });

  test("are all within the distance, in rising order, and lead with the word itself", () => {
    fc.assert(
      fc.property(shortWord, fc.uniqueArray(shortWord), fc.nat(3), (word, candidates, most) => {
        const found = nearest(word, candidates, most);
        const distances = found.map((candidate) => editDistance(word, candidate));
        expect(distances).toEqual(distances.toSorted((a, b) => a - b));
        expect(found).toHaveLength(candidates.filter((c) => editDistance(word, c) <= most).length);
        if (candidates.includes(word)) expect(found[0]).toBe(word);
      }),
    );
  });
});
