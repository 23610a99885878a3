import { describe, expect, test } from "vitest";
import { hover } from "../../server/service/hover.ts";
import { inlayHints } from "../../server/service/inlay-hints.ts";
import { signatureHelp } from "../../server/service/signature-help.ts";
import { open, shopRecord } from "../kit/service.ts";

function hovered(fixture: string): string {
  const { analysis, position } = open(fixture);
  return hover(analysis, position)?.text ?? "";
}

describe("hover", () => {
  test("of a keyword shows its form and what it is for", () => {
    expect(hovered("headnote 1\nbench b\n  sho$0ws flow\n")).toContain(
      "shows flow|meter-flow|percent|drop|signal",
    );
  });

  test("of a value shows it as written and in other units", () => {
    expect(hovered("headnote 1\nport p\n  valve 2.0$020 in\n")).toContain(
      "**2\\.020 in** = 2020 thou = 0.1683 ft = 51.31 mm",
    );
  });

  test("of a name shows what it stands for", () => {
    const text = hovered(
      shopRecord("     0.100  28.0  55.0\n").replace("  bench      north", "  bench      no$0rth"),
    );
    expect(text).toContain("**bench north** — quick bench");
    expect(text).toContain("repeat     0.35 %");
  });

  test("of a reading shows the result and the way to it with the numbers put in", () => {
    const text = hovered(shopRecord("     0.100               28.0       55$0.0\n"));
    expect(text).toMatch(/^\*\*54\.20 ± 0\.\d+ cfm\*\* corrected flow at 28 inH2O, air of the day/);
    expect(text).toContain("Cd curtain 0.593");
    expect(text).toContain("less the leak there, 0.8000 cfm: 54.20 cfm");
  });

  test("of a reading quoted elsewhere says what the square root leaves out", () => {
    const text = hovered(
      shopRecord("     0.100               10.0       3$05.0\n").replace(
        "target     28",
        "target     10\n  quote      28",
      ),
    );
    // An ideal nozzle from 10 to 28 inH2O at sea level: 1.6321 against 1.6733, 2.5 % apart (isentropic flow).
    expect(text).toMatch(/an ideal nozzle would scale by 1\.63\d\d instead, 2\.\d %/);
  });

  test("never lets a record's text be markup or a link", () => {
    const text = hovered(
      'headnote 1\nbench b "<img src=x> [a](http://x) `c`"\n  shows flow\nsession 2026-03-02\n  bench $0b\n',
    );
    expect(text.split("```")[0]).not.toMatch(/(?<!\\)[<[`]/);
  });

  test("of an allowed code says what it is", () => {
    expect(hovered("headnote 1\n# allow no-$0leak: taped\nbench b\n")).toContain("**no-leak** — ");
  });
});

describe("hints", () => {
  const both = `${shopRecord("     0.100  28.0  55.0\n     0.200  28.0  109.6\n")}
run i2
  baseline   i1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100  28.0  55.1
     0.200  28.0  114.0
`;

  test("stand behind the ends of rows: flow, Cd, and the gain over the baseline, said to be noise where it is", () => {
    const { analysis } = open(both);
    const [first] = analysis.runs;
    const kinds = { flow: true, cd: true, gain: true };
    const hints = inlayHints(analysis, 0, 100, kinds, ({ setup }) =>
      setup.run.baseline ? first?.result : undefined,
    );
    expect(hints.map(({ label }) => label.replace(/ ± [0-9.]+/, ""))).toEqual([
      "54.2 cfm  Cd curtain 0.593",
      "108.8 cfm  Cd curtain 0.595",
      "54.3 cfm  Cd curtain 0.594  +0.18 % (noise)",
      "113.2 cfm  Cd curtain 0.619  +4.0 %",
    ]);
    for (const { line, column } of hints) expect(column).toBe(both.split("\n")[line]?.length);
  });
});

describe("signature help", () => {
  test("shows the form with the part that comes next", () => {
    const { analysis, position } = open("headnote 1\nport p\n  seat 45 deg $0\n");
    const help = signatureHelp(analysis, position);
    const part = help?.parts[help.active];
    expect(help?.label.slice(part?.from, part?.to)).toBe("[width LENGTH]");
  });

  test("knows that a text is one value, blanks and all", () => {
    const { analysis, position } = open('headnote 1\nport p "as it $0\n');
    const help = signatureHelp(analysis, position);
    const part = help?.parts[help.active];
    expect(help?.label.slice(part?.from, part?.to)).toBe('["title"]');
  });
});
