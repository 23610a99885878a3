import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { tableCsv } from "../../../shared/render/table-csv.ts";
import { AS_CAST, SHORT_SIDE, smallRecord } from "../sample-record.ts";
import { HOSTILE, tableInput } from "./table-input.ts";

function cellsOf(text: string, codes: readonly string[] = []): readonly Record<string, string>[] {
  const out = tableCsv(tableInput(text, () => codes));
  return Papa.parse<Record<string, string>>(out, { header: true, skipEmptyLines: true }).data;
}

describe("a table as CSV", () => {
  test("has one reading a line, with units in the heads", () => {
    const rows = cellsOf(AS_CAST);
    expect(rows).toHaveLength(6);
    expect(rows[3]).toMatchObject({
      file: "a.headnote",
      line: "43",
      run: "i3-as-cast",
      side: "intake",
      cylinder: "3",
      stage: "as cast",
      void: "false",
      "lift[in]": "0.4",
      "depression[inH2O]": "28",
      "quote[inH2O]": "28",
      reference: "",
      "correctedFlow[cfm]": "228",
      liftRatio: "0.19801980198",
      "settle[s]": "1.6",
    });
    expect(Number(rows[3]?.["cd.curtain"])).toBeCloseTo(0.62374629207, 10);
    expect(Number(rows[3]?.["velocity.pinch[ft/s]"])).toBeCloseTo(81.35929756 / 0.3048, 6);
  });

  test("keeps void rows with their reason", () => {
    expect(cellsOf(SHORT_SIDE).map((row) => [row["void"], row["remark"]])).toContainEqual([
      "true",
      "belt slipped",
    ]);
  });

  test("gives all runs the units of the first", () => {
    const more = ["run m", "lift[mm] depression[kPa] flow[L/s]", "2.54 6.97448948 47.194744320"].join("\n");
    const rows = cellsOf(smallRecord({ rows: ["0.1 28 50"], more }));
    expect(rows[1]).toMatchObject({ run: "m", "lift[in]": "0.1", "correctedFlow[cfm]": "100" });
  });

  test("has its head also without readings", () => {
    const head = tableCsv(tableInput(""));
    expect(head.split("\r\n")).toHaveLength(2);
    expect(head).toContain("correctedFlow[L/s],uncertainty[L/s]");
  });

  test("lists the findings of a row", () => {
    expect(cellsOf(AS_CAST, ["off-target", "impossible"])[0]?.["findings"]).toBe("off-target impossible");
  });

  test.each(HOSTILE)("lets %j neither act nor become a formula", (hostile) => {
    const text = smallRecord({ run: [`stage "${hostile}"`], rows: [`0.1 28 50 "${hostile}"`] });
    expect(tableCsv(tableInput(text))).not.toMatch(/[^\P{Cc}\r\n]|\p{Bidi_C}/u);
    const [row] = cellsOf(text);
    for (const cell of [row?.["stage"], row?.["remark"]]) expect(cell).not.toMatch(/^\s*[=+\-@＝]/);
  });
});
