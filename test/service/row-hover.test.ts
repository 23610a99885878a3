import { describe, expect, test } from "vitest";
import { hover } from "../../server/service/hover.ts";
import { open } from "../kit/service.ts";

/** The hover of the only row of a record; dry air of 101325 Pa at 15 degC. */
function rowHovered(parts: { bench: string; session: string; head: string; row: string }): string {
  const { analysis, position } = open(`headnote 1
bench b
  ${parts.bench}
session 2026-03-02
  bench b
  air 15 degC 101325 Pa 0 %RH
  ${parts.session}
run r
  ${parts.head}
  $0${parts.row}
`);
  return (hover(analysis, position)?.text ?? "").replaceAll("\\", "");
}

const flow = (depression: string, quote: string) =>
  rowHovered({
    bench: "shows flow",
    session: `target ${depression} inH2O\n  quote ${quote} inH2O`,
    head: "lift[in]  depression[inH2O]  flow[cfm]",
    row: `0.300  ${depression}  100.0`,
  });

describe("the way from the display to the result", () => {
  test("begins with the number as it was written, and its range", () => {
    const text = rowHovered({
      bench: "shows percent\n  range low 90 cfm at 28 inH2O\n  range high 200 cfm at 28 inH2O",
      session: "leak none",
      head: "lift[in]  depression[inH2O]  reading[%]  range",
      row: "0.300  28.0  72.50  high",
    });
    expect(text).toContain("- display 72.50 % on range high at 28 inH2O, through the meter: 145.0 cfm\n");
  });

  test("shows what a display that is true in another air is multiplied by", () => {
    const text = rowHovered({
      bench: "shows flow in din-1343",
      session: "leak none",
      head: "lift[in]  depression[inH2O]  flow[cfm]",
      row: "0.300  28.0  100.0",
    });
    // sqrt(1.2930/1.2255) = 1.0272, by hand; sqrt(288.15/273.15) = 1.0271 were air an ideal gas.
    expect(text).toMatch(
      /- whose numbers are true in din-1343: × √\(1\.2930 \/ 1\.2255\) = × 1\.0272 = 102\.7 cfm/,
    );
  });

  test("puts the numbers into the square root", () => {
    // sqrt(28/25) = 1.0583, by hand.
    expect(flow("25.0", "28")).toContain("- to 28 inH2O by the square root: × 1.0583 = 105.8 cfm");
  });
});

describe("what an ideal nozzle would give instead of the square root", () => {
  // Isentropic over incompressible flow at 101325 Pa: 0.996041 at 3, 0.986743 at 10, 0.966517 at 25, 0.962422 at 28 and
  // 0.934665 at 48 inH2O, computed with numpy; the last but one equals the expansibility that the Python package fluids gives.
  test.each([
    ["10.0", "28", "1.6321", "2.5 %"],
    ["25.0", "28", "1.0538", "0.43 %"],
    ["3.0", "28", "2.9519", "3.5 %"],
    ["28.0", "48", "1.2715", "3.0 %"],
  ])("from %s to %s inH2O", (from, to, factor, apart) => {
    expect(flow(from, to)).toContain(`an ideal nozzle would scale by ${factor} instead, ${apart} apart`);
  });

  test("is not said where it makes no difference", () => {
    expect(flow("28.0", "28")).not.toContain("nozzle");
    expect(flow("28.1", "28")).not.toContain("nozzle");
  });
});
