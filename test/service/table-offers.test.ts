import { describe, expect, test } from "vitest";
import { labelsAt, offersAt } from "../kit/offers.ts";
import { shopRecord } from "../kit/service.ts";

const HEAD = "  lift[in]  depression[inH2O]  flow[cfm]";
const percentBench = `headnote 1
bench cabinet
  shows percent
  range low 90 cfm at 28 inH2O
  range high 360 cfm at 28 inH2O
session 2026-03-02
  bench cabinet
`;

describe("columns", () => {
  test("that the bench needs come first", () => {
    const found = labelsAt(`${percentBench}run r\n  lift[in]  $0\n`);
    expect(found.slice(0, 3)).toEqual(["depression", "reading", "range"]);
  });

  test("of a check of the bench itself follow the session's bench", () => {
    const found = labelsAt(`${percentBench}plate-check p\n  depression[inH2O]  $0\n`);
    expect(found.slice(0, 2)).toEqual(["reading", "range"]);
  });

  test("of what belongs to a run follow that run's bench", () => {
    const run = `${percentBench}  bench north
bench north
  shows flow
run r
  bench cabinet
`;
    expect(labelsAt(`${run}trace 0.4 in of r\n  time[s]  depression[inH2O]  $0\n`)[0]).toBe("reading");
    expect(labelsAt(`${run}ladder 0.4 in of r\n  depression[inH2O]  $0\n`).slice(0, 2)).toEqual([
      "reading",
      "range",
    ]);
    const rows = "ladder 0.4 in of r\n  depression[inH2O]  reading[%]  range\n";
    expect(labelsAt(`${run}${rows}  10  43.1  $0\n`)).toEqual(["low", "high"]);
  });

  test("begin with what the table is about", () => {
    const columns = (fixture: string) =>
      offersAt(fixture)
        .filter(({ kind }) => kind === "column")
        .map(({ label }) => label);
    expect(columns("headnote 1\ncam c\n  $0\n")).toEqual(["angle", "lift"]);
    expect(columns("headnote 1\nbench b\n  shows signal\n  $0\n")).toEqual(["signal", "flow"]);
    expect(columns("headnote 1\nmap of r\n  $0\n").slice(0, 2)).toEqual(["x", "y"]);
    expect(columns("headnote 1\ntrace 0.4 in of r\n  $0\n").slice(0, 2)).toEqual(["time", "depression"]);
  });

  test("have the unit that the file writes", () => {
    const inserts = offersAt("headnote 1\nsession 2026-03-02\n  target 7 kPa\nrun r\n  lift[mm]  $0\n");
    expect(inserts.find(({ label }) => label === "depression")?.insert).toBe("depression[kPa]");
    expect(inserts.find(({ label }) => label === "settle")?.insert).toBe("settle[s]");
  });

  test("that stand behind the cursor are not offered again, nor any once there is a table", () => {
    expect(labelsAt("headnote 1\nrun r\n  $0  flow[cfm]\n")).not.toContain("flow");
    expect(labelsAt(shopRecord("     0.100  28.0  55.0\n  $0\n"))).not.toContain("depression");
  });
});

describe("the first cell of a row", () => {
  const session = (stations: string) =>
    `headnote 1\nsession 2026-03-02\n  stations ${stations}\nrun r\n${HEAD}\n`;

  test("is the next lift", () => {
    const [next] = offersAt(shopRecord("     0.100  28.0  55.0\n     0.200  28.0  109.6\n     $0\n"));
    expect(next).toMatchObject({ label: "0.300", detail: "next lift" });
  });

  test("is the first station where there is no row yet, in the column's unit", () => {
    expect(labelsAt(`${session("0.050 in to 0.6 in by 0.050 in")}  $0\n`)[0]).toBe("0.050");
    expect(labelsAt(`${session("1.27 mm to 12 mm by 1.27 mm")}  $0\n`)[0]).toBe("0.050");
  });

  test("is none of them in a table that begins with something else", () => {
    const table =
      "  depression[inH2O]  lift[in]  flow[cfm]\n     28.0  0.100  55.0\n     28.0  0.200  109.6\n";
    expect(offersAt(`headnote 1\nrun r\n${table}     $0\n`).some(({ kind }) => kind === "value")).toBe(false);
  });

  test("is nothing behind the last station", () => {
    const rows = `${session("0.1 in to 0.2 in by 0.1 in")}     0.200  28.0  109.6\n     $0\n`;
    expect(offersAt(rows).some(({ kind }) => kind === "value")).toBe(false);
  });
});

describe("the cells of a row", () => {
  const rows = `${percentBench}run r\n  lift[in]  depression[inH2O]  reading[%]  range\n`;

  test("take nothing but the names of the bench's ranges", () => {
    expect(labelsAt(`${rows}     0.100  $0\n`)).toEqual([]);
    expect(offersAt(`${rows}     0.100  28.0  72.5  $0\n`)).toMatchObject([
      { label: "low", detail: "90 cfm" },
      { label: "high", detail: "360 cfm" },
    ]);
  });

  test("end in a void mark, also in tables that are no run's", () => {
    const check = `${percentBench}plate-check p\n  depression[inH2O]  reading[%]\n     28.0  72.5 $0\n`;
    expect(offersAt(check)).toMatchObject([{ label: "void", insert: 'void ""', snippet: 'void "$1"' }]);
  });
});

test("a blank that indents or aligns opens no list; one behind a keyword does", () => {
  const labels = (fixture: string) => offersAt(fixture, [], " ").map(({ label }) => label);
  expect(labels(shopRecord("     0.100  28.0  55.0 $0\n"))).toEqual([]);
  expect(labels(shopRecord("     0.100  28.0  55.0\n   $0\n"))).toEqual([]);
  expect(labels("headnote 1\nbench b\n  shows $0\n")).toContain("flow");
  expect(labelsAt(shopRecord("     0.100  28.0  55.0 $0\n"))).toEqual(["void"]);
});
