import { describe, expect, test } from "vitest";
import { mismatches } from "../../../shared/calc/comparable.ts";
import { evaluateText } from "../../kit/evaluate.ts";

const BASE: Readonly<Record<string, string>> = {
  port: "p1",
  target: "28 inH2O",
  reference: "isa",
  air: "20 degC 1000 hPa 40 %RH",
  adapter: "4.030 in",
  entry: "clay",
};

/** What differs between a run in the conditions of `BASE` and one with others; "" states none. */
function differences(change: Readonly<Record<string, string>>, ports = ""): readonly string[] {
  const lines = (conditions: Readonly<Record<string, string>>) =>
    Object.entries(conditions)
      .filter(([, value]) => value !== "")
      .map(([key, value]) => `${key} ${value}`)
      .join("\n");
  const [a, b] = evaluateText(`headnote 1
port p1
side intake
valve 2.020 in
port p2
side exhaust
valve 2.020 in
${ports}
run a
${lines(BASE)}
run b
${lines({ ...BASE, ...change })}
`).runs;
  if (a === undefined || b === undefined) throw new RangeError("two runs are wanted");
  const found = mismatches(a.setup, b.setup);
  expect(mismatches(b.setup, a.setup)).toEqual(
    found.map(({ what, own, theirs }) => ({ what, own: theirs, theirs: own })),
  );
  return found.map(({ what, own, theirs }) => `${what}: ${own} / ${theirs}`);
}

describe("two runs were read alike", () => {
  test("in the same conditions, and in the same sizes in other units", () => {
    expect(differences({})).toEqual([]);
    expect(differences({ adapter: "102.4 mm" })).toEqual([]);
    expect(differences({ target: "6.97 kPa", quote: "28 inH2O" })).toEqual([]);
    expect(differences({ air: "31 degC 990 hPa 20 %RH" })).toEqual([]);
  });

  test("an intake without a stub is one whose stub nobody mentions", () => {
    expect(differences({ stub: "none" })).toEqual([]);
    expect(differences({ stub: "1.750 in" })).toEqual(["stub: not stated / 1.750 in"]);
  });
});

describe("two runs were not read alike", () => {
  test.each([
    [{ target: "20 inH2O", quote: "28 inH2O" }, ["target: 28 inH2O / 20 inH2O"]],
    [{ target: "28.5 inH2O", quote: "28 inH2O" }, ["target: 28 inH2O / 28.5 inH2O"]],
    [{ quote: "25 inH2O" }, ["quote: 28 inH2O / 25 inH2O"]],
    [{ reference: "dry-20C" }, ["reference: isa / dry-20C"]],
    [{ adapter: "4.060 in" }, ["adapter: 4.030 in / 4.060 in"]],
    [{ adapter: "" }, ["adapter: 4.030 in / not stated"]],
    [{ entry: "bare" }, ["entry: clay / bare"]],
    [{ direction: "blows" }, ["direction: draws / blows"]],
  ])("where the other has %o", (change, expected) => {
    expect(differences(change)).toEqual(expected);
  });

  test("on two sides", () => {
    expect(differences({ port: "p2", direction: "draws", stub: "none" })).toEqual(["side: intake / exhaust"]);
  });

  test("with two valves, or valves of another size", () => {
    const ports = "port p3\nside intake\nvalve 2.055 in\nport p4\nside intake\nvalve 2.020 in\nvalves 2";
    expect(differences({ port: "p3" }, ports)).toEqual(["valve: 2.020 in / 2.055 in"]);
    expect(differences({ port: "p4" }, ports)).toEqual(["valve: 2.020 in / 2 of 2.020 in"]);
  });

  test("without a reference air each is in the air of its own day", () => {
    const day = { reference: "", air: "31 degC 990 hPa 20 %RH" };
    expect(differences(day)[0]).toMatch(/^reference: isa \/ the air of the day, 1\.1\d+ kg\/m3$/);
  });
});
