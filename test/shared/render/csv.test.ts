import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { csv } from "../../../shared/render/csv.ts";
import { HOSTILE } from "./table-input.ts";

function checkField(cell: string | number | undefined, expected: string): void {
  expect(csv([[cell, "x"]])).toBe(`${expected},x\r\n`);
}

describe("comma-separated values", () => {
  test("quote what RFC 4180 says must be quoted", () => {
    checkField("a,b", '"a,b"');
    checkField('say "x"', '"say ""x"""');
    checkField("a\nb", '"a\nb"');
    checkField("plain text", "plain text");
    checkField("", "");
    checkField(undefined, "");
  });

  test("write numbers as numbers, also negative ones", () => {
    checkField(-1.25, "-1.25");
    checkField(0.1, "0.1");
    checkField(Number.NaN, "");
  });

  test.each(HOSTILE.filter((text) => /^\s*[=+\-@＝]/.test(text)))("neutralise the formula %j", (text) => {
    checkField(text, `'${text}`);
  });

  test("neutralise a tab or a line end in front, and quote what other separators would cut", () => {
    checkField("\t=1", '"\'\t=1"');
    checkField("\rx", '"\'\rx"');
    checkField("a;=1", '"a;=1"');
  });

  test("are read back by an independent reader (papaparse)", () => {
    const text = fc.string({ unit: "grapheme" }).filter((cell) => !/^(\s*[=+\-@＝＋－＠]|[\t\r])/.test(cell));
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text, text), { minLength: 1 }), (rows) => {
        const { data } = Papa.parse(csv(rows), { delimiter: ",", newline: "\r\n" });
        expect(data.slice(0, -1)).toEqual(rows);
      }),
    );
  });
});
