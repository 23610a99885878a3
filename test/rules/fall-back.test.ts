// How a fall-back is told: where it is marked, what else it points to, and what is done about it.
import { describe, expect, test } from "vitest";
import { checkRecord, codesOf, findingOf, HEAD, record } from "../kit/check-record.ts";

const rows = (...flows: readonly string[]) => flows.map((flow, index) => `0.${index + 3}00 28.0 ${flow}`);

/** The lifts of the rows that a finding and its related places stand in. */
function lifts(fixture: string, code: string): { readonly at: string; readonly related: readonly string[] } {
  const lines = fixture.split("\n");
  const lift = (line: number) => lines[line]?.trim().split(" ")[0] ?? "";
  const { finding } = findingOf(fixture, code);
  return {
    at: lift(finding.span.line),
    related: finding.related.map(({ span, message }) => `${message} ${lift(span.line)}`),
  };
}

describe("a fall-back", () => {
  test("is marked at its deepest row, from its onset to its end", () => {
    const fixture = record({ rows: rows("150.0", "185.0", "178.0", "180.0") });
    expect(codesOf(fixture)).toEqual(["fall-back"]);
    expect(lifts(fixture, "fall-back")).toEqual({
      at: "0.500",
      related: ["the onset 0.400", "up to here 0.600"],
    });
  });

  test("that is deepest in its last row points to its onset alone", () => {
    const fixture = record({ rows: rows("150.0", "185.0", "180.0", "178.0") });
    expect(lifts(fixture, "fall-back")).toEqual({ at: "0.600", related: ["the onset 0.400"] });
  });

  test("says how deep, between which flows, what chance gives, and which lifts to read again", () => {
    const { message, help } = findingOf(
      record({ rows: rows("150.0", "185.0", "178.0", "180.0") }),
      "fall-back",
    );
    // (185 - 178)/185 = 3.784 %; three stations from 95 % of the onset on: 2.0808 · 0.4 % · sqrt(2) = 1.177 %, by hand.
    expect(message).toBe(
      "flow falls back 3.8 % after 0.400 in (185.0 → 178.0 cfm; chance alone gives 1.2 % here); it does not recover",
    );
    expect(help).toBe("repeat 0.450 and 0.500 in; if it stays, look at the short side");
  });

  test("that recovers says where, and the next one is found behind it", () => {
    const fixture = record({ rows: rows("150.0", "185.0", "178.0", "190.0", "183.0") });
    expect(codesOf(fixture)).toEqual(["fall-back", "fall-back"]);
    checkRecord(`
      headnote 1
      bench north
        shows flow
        repeat 0.4 %
      session 2026-03-02
        bench north
        target 28 inH2O
        air 20 degC 1000 hPa 40 %RH
        leak none
      run r1
        lift[in] depression[inH2O] flow[cfm]
        0.300    28.0              150.0
        0.400    28.0              185.0
        0.500    28.0              178.0
      # ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning[fall-back]
        0.600    28.0              190.0
        0.700    28.0              183.0
      # ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning[fall-back]
    `);
  });

  test("that recovers is marked up to where it does", () => {
    const fixture = record({ rows: rows("150.0", "185.0", "178.0", "190.0") });
    expect(lifts(fixture, "fall-back")).toEqual({
      at: "0.500",
      related: ["the onset 0.400", "recovered here 0.600"],
    });
  });

  test("whose deepest station was read less often names the one that resolves it", () => {
    const fixture = record({
      rows: [
        ...rows("150.0", "185.0"),
        ...Array.from({ length: 3 }, () => "0.400 28.0 185.0"),
        ...Array.from({ length: 4 }, () => "0.500 28.0 183.2"),
        "0.600 28.0 183.1",
      ],
    });
    // sqrt(1/4 + 1/4) · 2.0808 · 0.4 % = 0.589 %, against 1.8/185 = 0.973 %; at 0.600 in sqrt(1/4 + 1) gives 0.931 %.
    const { message } = findingOf(fixture, "fall-back");
    expect(message).toContain("falls back 1.0 % after 0.400 in (185.0 → 183.1 cfm; chance alone gives");
    expect(message).toContain("chance alone gives 0.93 % here");
    const once = fixture.replace("0.600 28.0 183.1", "0.600 28.0 183.3\n0.600 28.0 183.1");
    expect(findingOf(once, "fall-back").message).toContain("here)");
  });

  test("belongs to its own cylinder: another one's readings make none of it, and take none away", () => {
    const fixture = record({ run: ["cylinder 1"], rows: rows("150.0", "185.0", "178.0", "180.0") });
    const two = `${fixture}\nrun r2\ncylinder 2\n${HEAD}\n${rows("150.0", "185.0", "191.0", "192.0").join("\n")}`;
    const three = `${two}\nrun r3\ncylinder 3\n${HEAD}\n${rows("150.0", "185.0", "179.0", "180.0").join("\n")}`;
    const fallBacks = (text: string) => codesOf(text).filter((code) => code !== "cylinders-apart");
    expect(fallBacks(two)).toEqual(["fall-back"]);
    expect(fallBacks(three)).toEqual(["fall-back", "fall-back"]);
  });

  test("is told in the units of the record", () => {
    const metric = record({
      head: "lift[mm] depression[kPa] flow[L/s]",
      session: ["bench north", "target 7.0 kPa", "air 20 degC 1000 hPa 40 %RH", "leak none"],
      rows: ["8.0 7.0 71.0", "10.0 7.0 87.0", "12.0 7.0 84.0"],
    });
    const { message, help } = findingOf(metric, "fall-back");
    expect(message).toContain("after 10.0 mm (87.00 → 84.00 L/s");
    expect(help).toContain("repeat 11.00 and 12.00 mm");
  });

  test("is sought on the way up alone", () => {
    const down = [...rows("150.0", "185.0", "191.0"), "0.400 28.0 185.4", "0.300 28.0 150.2"];
    expect(codesOf(record({ rows: down }))).toEqual([]);
  });

  test("is not made by a row that is void, impossible or a slip", () => {
    const sound = rows("150.0", "185.0", "191.0", "192.0");
    const withBad = (bad: string) => record({ rows: [...sound.slice(0, 3), bad, ...sound.slice(3)] });
    expect(codesOf(withBad('0.550 28.0 150.0 void "belt"'))).toEqual([]);
    expect(codesOf(withBad("0.550 28.0 19.1"))).toEqual(["unit-slip"]);
  });

  test("that a single bad reading makes is gone with enough readings that are good", () => {
    const once = rows("150.0", "185.0", "183.4");
    expect(codesOf(record({ rows: once }))).toEqual(["fall-back-not-resolved"]);
    const again = [...once, "0.500 28.0 185.6", "0.500 28.0 186.0"];
    expect(codesOf(record({ rows: again }))).not.toContain("fall-back");
  });
});

describe("a drop that is not resolved", () => {
  test("is a hint with the readings that would resolve it", () => {
    const { severity, help } = findingOf(
      record({ rows: rows("150.0", "185.0", "183.4", "184.0") }),
      "fall-back-not-resolved",
    );
    expect(severity).toBe("hint");
    // depth 0.8649 %, limit 2.0808: 2 (2.0808 · 0.4/0.8649)^2 = 1.85, so two, by hand.
    expect(help).toBe("2 readings in all at each of 0.400 in and 0.500 in would resolve a drop of this size");
  });

  test("is not told of below one standard uncertainty of the difference", () => {
    // 0.4 % · sqrt(2) = 0.566 % of 185 cfm is 1.05 cfm.
    expect(codesOf(record({ rows: rows("150.0", "185.0", "184.0") }))).toEqual([]);
    expect(codesOf(record({ rows: rows("150.0", "185.0", "183.9") }))).toEqual(["fall-back-not-resolved"]);
  });
});

test("a bench that repeats worse resolves less", () => {
  const bench = (repeat: string) => ["shows flow", `repeat ${repeat}`, "within 0.2 inH2O"];
  const flows = rows("150.0", "185.0", "178.0", "180.0");
  expect(codesOf(record({ bench: bench("0.4 %"), rows: flows }))).toEqual(["fall-back"]);
  expect(codesOf(record({ bench: bench("1.5 %"), rows: flows }))).toEqual(["fall-back-not-resolved"]);
  expect(codesOf(record({ bench: bench("3 %"), rows: flows }))).toEqual([]);
});
