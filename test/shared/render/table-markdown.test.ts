import { describe, expect, test } from "vitest";
import { tableMarkdown } from "../../../shared/render/table-markdown.ts";
import { AS_CAST, smallRecord } from "../sample-record.ts";
import { HOSTILE, tableInput } from "./table-input.ts";

/** The cells of each table line; a pipe that is escaped does not part cells. */
function tableCells(out: string): readonly (readonly string[])[] {
  const lines = out.split("\n").filter((line) => line.startsWith("|"));
  return lines.map((line) =>
    line
      .split(/(?<!\\)\|/)
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
}

describe("a table as Markdown", () => {
  test("has a heading, a table with a cell for every head, and the summary", () => {
    const out = tableMarkdown(tableInput(AS_CAST));
    expect(out.startsWith("## i3-as-cast\n\n- port: a114-intake, intake, cylinder 3, draws\n")).toBe(true);
    const [head, rule, ...rows] = tableCells(out);
    expect(head?.slice(0, 4)).toEqual(["lift, in", "depression, inH2O", "corrected flow, cfm", "±U, cfm"]);
    expect(rule?.slice(0, 2)).toEqual(["---:", "---:"]);
    expect(rows).toHaveLength(6);
    for (const row of rows) expect(row).toHaveLength(head?.length ?? 0);
    expect(rows[3]?.slice(0, 4)).toEqual(["0.400", "28.0", "228.0", "1.7"]);
    expect(out).toContain("\n- peak 228.0 cfm at 0.400 in\n");
  });

  test("has a second table where stations are averages", () => {
    const out = tableMarkdown(tableInput(smallRecord({ rows: ["0.1 28 50.0", "0.1 28 50.5"] })));
    expect(out).toContain("\nAveraged where there are several readings:\n\n| lift, in | branch |");
  });

  test("says so where there is nothing", () => {
    expect(tableMarkdown(tableInput(""))).toBe("a.headnote: no runs\n");
    expect(tableMarkdown(tableInput("run r"))).toContain("\n- no readings\n");
  });

  test.each(HOSTILE)("lets %j neither act nor break the table", (hostile) => {
    const text = smallRecord({
      run: [`stage "${hostile}"`],
      rows: [`0.1 28 50 "${hostile}"`],
    });
    const out = tableMarkdown(tableInput(text));
    expect(out).not.toMatch(/[^\P{Cc}\n]|\p{Bidi_C}/u);
    expect(out).not.toMatch(/(?<!\\)[<>`*]/);
    const [head, , row] = tableCells(out);
    expect(row).toHaveLength(head?.length ?? 0);
  });
});
