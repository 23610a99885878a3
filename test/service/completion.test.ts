import { describe, expect, test } from "vitest";
import { labelsAt, offersAt } from "../kit/offers.ts";
import { edited, open, shopRecord } from "../kit/service.ts";

/** The line at `$0` after taking the completion of that label. */
function taken(fixture: string, label: string): string {
  const { position, text } = open(fixture);
  const found = offersAt(fixture).find((item) => item.label === label);
  if (found === undefined) throw new Error(`there is no ${label}`);
  const span = { line: position.line, from: found.from, to: found.to };
  return edited(text, [{ span, text: found.insert }]).split("\n")[position.line] ?? "";
}

describe("at the start of a line", () => {
  test("in a block what it needs and has not stands first, and what it has is not offered again", () => {
    const found = labelsAt("headnote 1\nport p\n  valve 2 in\n  $0\n");
    expect(found[0]).toBe("side");
    expect(found).not.toContain("valve");
    expect(found).toContain("seat");
    expect(found).toContain("session");
  });

  test("in a file without its first line that line comes first", () => {
    expect(labelsAt("$0")[0]).toBe("headnote");
    expect(labelsAt("# a shop\nhead$0\n")[0]).toBe("headnote");
    expect(labelsAt("headnote 1\nhead$0\n")).not.toContain("headnote");
  });

  test("at the margin headings come first", () => {
    expect(labelsAt("headnote 1\n$0\n")[0]).toBe("bench");
    expect(labelsAt("headnote 1\n$0\n")).toContain("include");
  });

  test("a word half typed is replaced as a whole", () => {
    expect(taken("headnote 1\nbench b\n  se$0ttl\n", "settle")).toBe("  settle ");
  });
});

describe("behind a keyword", () => {
  test("names of the right kind, those in use first", () => {
    const record = "headnote 1\nengine one\nengine two\nhead a\n  engine two\nhead b\n  engine $0\n";
    expect(labelsAt(record)).toEqual(["two", "one"]);
  });

  test("names of included files too", () => {
    expect(
      labelsAt(
        'headnote 1\ninclude "s.headnote"\nhead a\n  engine $0\n#- s.headnote\nheadnote 1\nengine e\n',
      ),
    ).toEqual(["e"]);
  });

  test("choices, and the word that says there is none", () => {
    expect(labelsAt("headnote 1\nport p\n  side $0\n")).toEqual(["intake", "exhaust"]);
    expect(labelsAt("headnote 1\nsession 2026-03-02\n  leak $0\n")).toContain("none");
  });

  test("units of the dimension behind a number, those that the file writes first", () => {
    const found = labelsAt("headnote 1\nport p\n  stem 7 mm\n  throat 35 mm\n  valve 40 $0\n");
    expect(found[0]).toBe("mm");
    expect(found).toContain("in");
    expect(found).not.toContain("inH2O");
  });

  test("no number is taken for the unit of what has none", () => {
    const shares = "headnote 1\nsession 2026-03-02\n  leak 1 cfm at 28 inH2O\nengine e\n  efficiency 92 $0\n";
    expect(labelsAt(shares)).toEqual(["%", "1"]);
  });

  test("units of all that is still open, where the order is free", () => {
    const found = labelsAt("headnote 1\nsession 2026-03-02\n  air 20 degC 1000 $0\n");
    expect(found).toContain("hPa");
    expect(found).not.toContain("degF");
  });

  test("the words of what may follow", () => {
    expect(labelsAt("headnote 1\nport p\n  seat 45 deg $0\n")).toEqual(["width"]);
    expect(labelsAt("headnote 1\nbench b\n  shows flow $0\n")).toEqual(["at", "in"]);
  });

  test("today for a date, and the time where readings are taken at one", () => {
    expect(labelsAt("headnote 1\nsession $0\n")).toEqual(["2026-11-25", "2026-11-25T09:30+01:00"]);
    expect(labelsAt("headnote 1\nplate p\n  due $0\n")).toEqual(["2026-11-25"]);
  });
});

describe("in tables and texts", () => {
  test("columns with their units, and units in a bracket", () => {
    expect(taken("headnote 1\nrun r\n  lift[in]  $0\n", "depression")).toBe("  lift[in]  depression[inH2O]");
    expect(labelsAt("headnote 1\nrun r\n  lift[$0]\n")[0]).toBe("in");
  });

  test("behind the cells of a row the mark of a void one", () => {
    expect(labelsAt(shopRecord("     0.100  28.0  55.0 $0\n"))).toEqual(["void"]);
  });

  test("files to include that are not yet", () => {
    const paths = ["shop.headnote", "main.headnote", "heads/h.headnote"];
    expect(labelsAt('headnote 1\ninclude "$0"\n', paths)).toEqual(["shop.headnote", "heads/h.headnote"]);
  });

  test("nothing in comments and remarks", () => {
    expect(labelsAt("headnote 1\n# se$0\n")).toEqual([]);
    expect(labelsAt(shopRecord('     0.100  28.0  55.0  "no$0"\n'))).toEqual([]);
  });
});
