// Numbers are read exactly as written, and every other spelling is named and mended.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type NumberProblem, readNumber, splitNumberUnit } from "../../../shared/quantity/number.ts";

const digits = (minLength: number, maxLength: number) =>
  fc.string({ unit: fc.constantFrom(..."0123456789"), minLength, maxLength });
const sign = fc.constantFrom("", "-");
const decimalText = fc.oneof(
  fc.tuple(sign, digits(1, 10)).map((parts) => parts.join("")),
  fc.tuple(sign, digits(0, 15), fc.constant("."), digits(1, 15)).map((parts) => parts.join("")),
);

function checkNumber(text: string, value: number, step: number): void {
  expect(readNumber(text), text).toEqual({ value, step });
}

function checkFault(text: string, problem: NumberProblem, ...mended: string[]): void {
  expect(readNumber(text), text).toEqual({ problem, mended });
  for (const word of mended) expect(readNumber(word), word).toHaveProperty("value");
}

describe("a number of the format", () => {
  test.each([
    ["12", 12, 1],
    ["0.400", 0.4, 0.001],
    ["28.0", 28, 0.1],
    [".5", 0.5, 0.1],
    ["-3.25", -3.25, 0.01],
    ["-.5", -0.5, 0.1],
    ["007", 7, 1],
    ["-0", 0, 1],
    ["-0.0", 0, 0.1],
    ["9007199254740993", 9007199254740992, 1],
    ["0.1234567890123456789", 0.12345678901234568, 1e-19],
  ])("%s is %d with a step of %d", checkNumber);

  test.each([
    ["11/32", 0.34375],
    ["1-3/8", 1.375],
    ["-1/2", -0.5],
    ["-1-3/8", -1.375],
    ["0/8", 0],
    ["-0/8", 0],
    ["1/3", 1 / 3],
  ])("the fraction %s is exactly %d", (text, value) => checkNumber(text, value, 0));

  test("is the double nearest to its digits, its step the place of the last", () => {
    fc.assert(
      fc.property(decimalText, (text) => {
        const decimals = text.includes(".") ? text.length - text.indexOf(".") - 1 : 0;
        checkNumber(text, Number(text) + 0, Number(`1e-${decimals}`));
      }),
      { numRuns: 1000 },
    );
  });

  test("may be any fraction with a denominator", () => {
    fc.assert(
      fc.property(fc.nat(99), fc.nat(999), fc.integer({ min: 1, max: 999 }), (whole, over, under) => {
        checkNumber(`${over}/${under}`, over / under, 0);
        checkNumber(`${whole}-${over}/${under}`, whole + over / under, 0);
      }),
    );
  });

  test("has at most thirty digits, so that it is always finite", () => {
    checkNumber("9".repeat(30), 1e30, 1);
    checkFault("9".repeat(31), "too-long");
    checkFault("9".repeat(400), "too-long");
    checkFault(`0.${"3".repeat(400)}`, "too-long");
    checkFault(`${"1".repeat(20)}/${"1".repeat(20)}`, "too-long");
  });
});

describe("a number in another spelling", () => {
  test.each<[string, NumberProblem, ...string[]]>([
    ["0,400", "decimal-comma", "0.400"],
    ["12,5", "decimal-comma", "12.5"],
    ["1,000", "decimal-comma", "1.000", "1000"],
    ["-1,000", "decimal-comma", "-1.000", "-1000"],
    ["1,234,567", "decimal-comma", "1234567"],
    ["1,234.5", "decimal-comma", "1234.5"],
    ["1.234,5", "decimal-comma", "1234.5"],
    ["28.0,", "decimal-comma", "28.0"],
    [",5", "decimal-comma", ".5"],
    ["5.", "trailing-point", "5"],
    ["-5.", "trailing-point", "-5"],
    ["+5", "plus-sign", "5"],
    ["+1,5", "plus-sign", "1.5"],
    ["+5.", "plus-sign", "5"],
    ["1e3", "exponent", "1000"],
    ["1.5E2", "exponent", "150"],
    ["1.50e-1", "exponent", "0.150"],
    ["-2.5e+1", "exponent", "-25"],
    [".5e1", "exponent", "5"],
    ["00.5e0", "exponent", "0.5"],
    ["0e5", "exponent", "0"],
    ["1e-7", "exponent", "0.0000001"],
    ["1e400", "exponent"],
    ["1e-400", "exponent"],
    ["２８.５", "foreign-digits", "28.5"],
    ["٢٨", "foreign-digits", "28"],
    ["𝟘𝟙𝟗", "foreign-digits", "019"],
    ["−3.5", "foreign-minus", "-3.5"],
    ["－3", "foreign-minus", "-3"],
    ["1–3/8", "foreign-minus", "1-3/8"],
    ["1/0", "zero-denominator"],
    ["2-1/00", "zero-denominator"],
  ])("%s is %s", checkFault);

  test.each([
    "",
    "-",
    ".",
    "-.",
    ",",
    "+",
    "e3",
    "--5",
    "1.2.3",
    "1,,2",
    "1/2/3",
    "1-3",
    "2026-11-20",
    "3a-as-cast",
    "NaN",
    "Infinity",
    "0x10",
    "1_000",
    "½",
    "x".repeat(100_000),
  ])("%s is no number", (text) => checkFault(text, "not-a-number"));

  test("keeps its value when it is mended", () => {
    const positive = decimalText.map((text) => text.replace("-", ""));
    fc.assert(
      fc.property(positive, (text) => {
        checkFault(`+${text}`, "plus-sign", text);
        checkFault(`−${text}`, "foreign-minus", `-${text}`);
        checkFault(text.replace(/\d/, "１"), "foreign-digits", text.replace(/\d/, "1"));
      }),
    );
    const short = fc.tuple(fc.nat(99_999), fc.nat(99), fc.integer({ min: -5, max: 5 }));
    fc.assert(
      fc.property(short, ([whole, decimals, exponent]) => {
        const text = `${whole}.${decimals}e${exponent}`;
        const read = readNumber(text);
        const mended = "mended" in read ? read.mended : [];
        expect(mended.map(Number), text).toEqual([Number(text)]);
      }),
    );
  });

  test("never throws, never gives a value that is not finite, and mends only to what can be read", () => {
    const numberLike = fc.string({ unit: fc.constantFrom(..."0123456789.,-+/eE−٣ "), maxLength: 12 });
    fc.assert(
      fc.property(fc.oneof(numberLike, fc.string({ unit: "binary" })), (text) => {
        const read = readNumber(text);
        if ("value" in read) expect(Number.isFinite(read.value)).toBe(true);
        else for (const word of read.mended) expect(readNumber(word), text).toHaveProperty("value");
      }),
      { numRuns: 2000 },
    );
  });
});

describe("a number with its unit in one word", () => {
  test.each([
    ["2.02in", "2.02", "in"],
    ["45deg", "45", "deg"],
    ["71.5°F", "71.5", "°F"],
    ['29.18"Hg', "29.18", '"Hg'],
    ['2.02"', "2.02", '"'],
    ["11/32in", "11/32", "in"],
    ["1-3/8in", "1-3/8", "in"],
    ["-5degC", "-5", "degC"],
    [".5mm", ".5", "mm"],
    ["42%RH", "42", "%RH"],
    ["0.35%", "0.35", "%"],
    ["28inH2O@60degF", "28", "inH2O@60degF"],
    ["2,02in", "2,02", "in"],
    ["2.in", "2.", "in"],
    ["1e3Pa", "1e3", "Pa"],
    ["−5°C", "−5", "°C"],
  ])("%s splits", (text, number, unit) => {
    expect(splitNumberUnit(text)).toEqual({ number, unit });
  });

  test.each([
    "3a-as-cast",
    "2026-11-20",
    "28",
    "21",
    "in",
    "",
    "-",
    "-in",
    "1-3in",
    "i3",
    "4.030inn",
    "9".repeat(1e5),
  ])("%s stays whole", (text) => {
    expect(splitNumberUnit(text)).toBeUndefined();
  });

  test("takes any text without harm, and loses none of it", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const split = splitNumberUnit(text);
        if (split !== undefined) expect(split.number + split.unit).toBe(text);
      }),
    );
  });
});
