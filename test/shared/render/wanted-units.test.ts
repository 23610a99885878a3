import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { quantity } from "../../../shared/quantity/quantity.ts";
import { unitsOf } from "../../../shared/quantity/unit.ts";
import { unit } from "../../../shared/render/display-units.ts";
import { tableCsv } from "../../../shared/render/table-csv.ts";
import { tableMarkdown } from "../../../shared/render/table-markdown.ts";
import { tableReport } from "../../../shared/render/table-report.ts";
import { tableText } from "../../../shared/render/table-text.ts";
import { quantityIn, writtenIn } from "../../../shared/render/wanted-units.ts";
import { chartOf, dataOf, panelsOf, runText } from "../../kit/chart.ts";
import { AS_CAST } from "../sample-record.ts";
import { tableInput } from "./table-input.ts";

const METRIC = ["mm", "L/s", "kPa"].map(unit);
const metric = () => ({ ...tableInput(AS_CAST), wanted: METRIC });

describe("a written number in another unit", () => {
  // NIST SP 811 (2008), B.8: 1 in = 25.4 mm; 1 inH2O (conventional) = 249.0889 Pa; 1 ft3/min = 0.4719474 L/s.
  test.each([
    ["0.100", 0.1, 0.001, "in", "mm", "2.54"],
    ["2.54", 2.54, 0.01, "mm", "in", "0.1000"],
    ["100", 100, 1, "thou", "mm", "2.54"],
    ["11/32", 11 / 32, 0, "in", "mm", "8.73"],
    ["27.9", 27.9, 0.1, "inH2O", "kPa", "6.95"],
    ["28", 28, 1, "inH2O", "kPa", "6.97"],
    ["1.8", 1.8, 0.1, "cfm", "L/s", "0.850"],
  ])("%s (%d) to %d %s is in %s %s", (text, value, step, from, to, shown) => {
    expect(writtenIn(quantity(text, value, step, unit(from)), unit(to))).toBe(shown);
  });

  test("keeps its own digits in its own unit, and where nothing of its kind is asked for", () => {
    const lift = quantity(".5", 0.5, 0.1, unit("in"));
    expect(quantityIn(lift, [unit("in")])).toBe(".5 in");
    expect(quantityIn(lift, [unit("kPa")])).toBe(".5 in");
    expect(quantityIn(lift, [unit("in"), unit("mm")])).toBe("12.7 mm");
  });

  test("is never off by more than half of its last written digit", () => {
    const lengths = unitsOf("length");
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom(...lengths),
        fc.constantFrom(...lengths.filter(({ symbol }) => ["in", "thou", "mm", "cm"].includes(symbol))),
        (whole, decimals, from, to) => {
          const step = 10 ** -decimals;
          const written = quantity((whole * step).toFixed(decimals), whole * step, step, from);
          const shown = Number(writtenIn(written, to)) * to.factor;
          expect(Math.abs(shown - written.value)).toBeLessThanOrEqual(0.5001 * written.step);
        },
      ),
    );
  });
});

describe("in the units that are asked for", () => {
  test("a table says of the findings that it quotes that they speak in the record's", () => {
    const quotes = "flow falls back 2.1 % after 0.400 in";
    const told = "- findings speak in the record's own units:\n";
    const inUnits = (...symbols: string[]) =>
      tableMarkdown({ ...tableInput(AS_CAST), portWords: () => [quotes], wanted: symbols.map(unit) });
    expect(inUnits("mm")).toContain(`${told}- ${quotes}\n`);
    expect(inUnits()).not.toContain(told);
    expect(inUnits("in", "cfm", "kg/s")).not.toContain(told);
  });

  test("a table says everything, but the air as it was read", () => {
    expect(tableText(metric())).toMatchInlineSnapshot(`
      "i3-as-cast
        port      a114-intake, intake, cylinder 3, draws
        stage     as cast
        date      2026-11-20T09:30+01:00
        bench     north, repeats to 0.35 %
        target    6.97 kPa
        air       71.5 degF, 29.18 inHg, 42 %RH, 1.1620 kg/m3
        leak      0.850 L/s at 6.97 kPa
        mounting  entry radiused, adapter 102.36 mm

        corrected flow at 6.97 kPa, air of the day; ±U: expanded uncertainty of one reading (k = 2)

                           corrected                     Cd     Cd      Cd     Cd  velocity
         lift  depression       flow     ±U    L/D  curtain    gap  throat   head     pinch  settle  remarks
         [mm]       [kPa]      [L/s]  [L/s]                                           [m/s]     [s]
         2.54        6.97      26.71   0.66  0.050    0.619  0.885   0.164  0.123     20.20     1.4
         5.08        6.97      58.43   0.74  0.099    0.677  0.848   0.359  0.268     44.18     1.5
         7.62        6.95      87.75   0.79  0.149    0.678  0.796   0.539  0.403     66.23     1.5
        10.16        6.97     107.60   0.78  0.198    0.624  0.708   0.661  0.494     81.36     1.6
        12.70        6.97     105.86   0.75  0.248    0.491  0.650   0.650  0.486     80.04     2.3  heard it tear
        15.24        6.97     105.29   0.75  0.297    0.407  0.647   0.647  0.483     79.61     2.2

        peak 107.60 L/s at 10.16 mm
        mean 85.13 L/s over lift 2.54 to 15.24 mm (its thirds: 52.82, 96.64, 105.92 L/s)
        time taken 10.5 s
      "
    `);
  });

  test("a CSV table has them in its head, and the same results", () => {
    const [head = "", first = ""] = tableCsv(metric()).split("\r\n");
    const cell = (csv: string, line: string, name: string) => line.split(",")[csv.split(",").indexOf(name)];
    expect(cell(head, first, "lift[mm]")).toBe("2.54");
    const [own = "", line = ""] = tableCsv(tableInput(AS_CAST)).split("\r\n");
    const flow = Number(cell(own, line, "correctedFlow[cfm]"));
    // NIST SP 811 (2008), B.8: 1 ft3/min = 4.719474e-4 m3/s.
    expect(Number(cell(head, first, "correctedFlow[L/s]"))).toBeCloseTo(flow * 0.4719474, 5);
  });

  test("a report has them beside the same SI values", () => {
    const si = (value: unknown): unknown =>
      JSON.stringify(value, (key, part) => (key === "value" || key === "unit" ? undefined : part));
    const report = tableReport(metric());
    expect(si(report)).toBe(si(tableReport(tableInput(AS_CAST))));
    expect(report.runs[0]).toMatchObject({
      target: { unit: "kPa" },
      air: { pressure: { unit: "inHg" } },
      summary: { peak: { lift: { value: 10.16, unit: "mm" }, flow: { unit: "L/s" } } },
    });
  });

  test("a chart has axes, conditions and what it tells of a point", () => {
    const spec = chartOf(runText("i1", [58.4]), { units: METRIC });
    expect(panelsOf(spec)[0]?.encoding.y.axis["title"]).toBe(
      "Corrected flow, L/s at 6.97 kPa, air of the day",
    );
    expect(dataOf(spec, "points")[0]?.["about"]).toMatch(/^i1, lift 2.54 mm: 27\.\d+ ± 0\.\d+ L\/s$/);
    expect(String(spec["description"])).toContain("drawn at 6.97 kPa");
  });
});
