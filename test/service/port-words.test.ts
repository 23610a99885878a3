import { describe, expect, test } from "vitest";
import { hover } from "../../server/service/hover.ts";
import { open, shopRecord } from "../kit/service.ts";

/** The hover of each row of a run, and the messages of the findings of its file. */
function hovered(rows: readonly string[]) {
  const { analysis, findings, text } = open(shopRecord(`${rows.join("\n")}\n`));
  const lines = text.split("\n");
  const texts = rows.map((row) => {
    const line = lines.lastIndexOf(row);
    return (hover(analysis, { line, column: 0 })?.text ?? "").replaceAll("\\", "");
  });
  return { texts, messages: findings.map(({ message }) => message) };
}

describe("what the port does at a reading", () => {
  const falling = ["0.300 28.0 150.0", "0.400 28.0 185.0", "0.500 28.0 178.0", "0.600 28.0 180.0"];

  test("a fall-back is told at each of its readings, in the words of its finding", () => {
    const { texts, messages } = hovered(falling);
    expect(messages).toHaveLength(1);
    expect(texts[0]).not.toContain("falls back");
    for (const text of texts.slice(1)) expect(text).toContain(messages[0]);
    expect(texts[1]).toContain("This is the onset.");
    expect(texts[2]).toContain("Here it is 3.8 % below the onset.");
    expect(texts[3]).toContain("Here it is 2.7 % below the onset.");
  });

  test("so is one that is not resolved, and where it recovers", () => {
    const { texts, messages } = hovered(["0.300 28.0 185.0", "0.400 28.0 183.7", "0.500 28.0 188.0"]);
    for (const text of texts) expect(text).toContain(messages[0]);
    expect(texts[2]).toContain("Here it is back.");
  });

  test("a difference of directions is told on both ways", () => {
    const { texts, messages } = hovered([
      "0.100 28.0 55.0",
      "0.300 28.0 150.0",
      "0.400 28.0 178.0",
      "0.300 28.0 146.0",
      "0.110 28.0 60.0",
    ]);
    expect(messages).toHaveLength(1);
    expect(texts[1]).toContain(messages[0]);
    expect(texts[3]).toContain(messages[0]);
    expect(texts[2]).not.toContain("on the way down");
  });

  test("nothing is said of a sound curve", () => {
    const { texts } = hovered(["0.300 28.0 150.0", "0.400 28.0 185.0", "0.500 28.0 195.0"]);
    for (const text of texts) expect(text).not.toMatch(/chance|onset|flat/);
  });
});
