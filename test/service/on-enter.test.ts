import { describe, expect, test } from "vitest";
import { nextRow } from "../../server/service/on-enter.ts";
import { open, shopRecord } from "../kit/service.ts";

/** What the line after Enter at `$0` is filled with; `undefined` where it stays empty. */
function checkEnter(rows: string, expected: string | undefined, extra = ""): void {
  const { analysis, position } = open(
    shopRecord(rows).replace("  entry      radiused\n", `  entry      radiused\n${extra}`),
  );
  expect(nextRow(analysis, position)).toBe(expected);
}

const ROWS = "     0.100               28.0       55.0\n";

describe("Enter behind a row", () => {
  test("goes on by the step so far, with the target, in its place and with the same digits", () => {
    checkEnter(`${ROWS}     0.200               27.9      109.6$0\n`, "     0.300               28.0  ");
  });

  test("goes down where the run goes down, and not below zero", () => {
    checkEnter(`     0.300  28.0  150.0\n     0.200  28.0  109.6$0\n`, "     0.100               28.0  ");
    checkEnter(`     0.200  28.0  109.6\n     0.100  28.0  55.0$0\n`, undefined);
  });

  test("goes on by the stated stations, and ends with them", () => {
    const stations = "  stations   0.100 in to 0.300 in by 0.100 in\n";
    checkEnter(`     0.100               28.0       55.0$0\n`, "     0.200               28.0  ", stations);
    checkEnter(`${ROWS}     0.300               28.0      150.0$0\n`, undefined, stations);
  });

  test("goes down through the stated stations on the way back, and ends with the first", () => {
    const stations = "  stations   0.100 in to 0.300 in by 0.100 in\n";
    const top = "     0.300               28.0      150.0\n";
    checkEnter(
      `${top}     0.200               28.0      109.6$0\n`,
      "     0.100               28.0  ",
      stations,
    );
    checkEnter(
      `${top}     0.250               28.0      130.0$0\n`,
      "     0.200               28.0  ",
      stations,
    );
    checkEnter(`${top}     0.100               28.0       55.0$0\n`, undefined, stations);
  });

  test("looks past void rows for the step", () => {
    const rows = `${ROWS}     0.150               28.0       80.0  void "slipped"\n     0.200               28.0      109.6$0\n`;
    checkEnter(rows, "     0.300               28.0  ");
  });

  test("goes on behind a remark too, and gives the lift again whose reading was set aside", () => {
    checkEnter(
      `${ROWS}     0.200               27.9      109.6  "noisy"$0\n`,
      "     0.300               28.0  ",
    );
    const slipped = `${ROWS}     0.200               27.9      109.6  void "belt slipped"$0\n`;
    checkEnter(slipped, "     0.200               28.0  ");
    checkEnter(slipped, "     0.200               28.0  ", "  stations   0.100 in to 0.300 in by 0.100 in\n");
  });

  test.each([
    ["the first row, whose step nobody knows", `     0.100               28.0       55.0$0\n`],
    ["inside a row", `${ROWS}     0.200       $0        27.9      109.6\n`],
    ["inside a remark", `${ROWS}     0.200               27.9      109.6  "noi$0sy"\n`],
    ["between row and remark", `${ROWS}     0.200               27.9      109.6 $0 "noisy"\n`],
    ["behind a comment", `${ROWS}     0.200               27.9      109.6  # noisy$0\n`],
    ["an empty line", `${ROWS}$0\n`],
  ])("does nothing of its own at %s", (_, rows) => {
    checkEnter(rows, undefined);
  });

  test("does nothing of its own behind properties and heads", () => {
    const { analysis } = open(shopRecord(ROWS));
    for (const line of [0, 2, 3, 15, 22, 23]) {
      expect(nextRow(analysis, { line, column: 40 })).toBeUndefined();
    }
  });
});
