import { describe, expect, test } from "vitest";
import { tableText } from "../../../shared/render/table-text.ts";
import { AS_CAST, SHORT_SIDE, smallRecord } from "../sample-record.ts";
import { HOSTILE, tableInput } from "./table-input.ts";

/** The words of the line that begins with a word, columns apart. */
function checkLine(out: string, start: string, words: readonly string[]): void {
  const line = out.split("\n").find((candidate) => candidate.trim().startsWith(start));
  expect(line?.trim().split(/ {2,}/)).toEqual(words);
}

describe("a table as text", () => {
  test("of the sample record", () => {
    expect(tableText(tableInput(AS_CAST, (row) => (row.lift === 0.01016 ? ["fall-back"] : [])))).toBe(
      `i3-as-cast
  port      a114-intake, intake, cylinder 3, draws
  stage     as cast
  date      2026-11-20T09:30+01:00
  bench     north, repeats to 0.35 %
  target    28 inH2O
  air       71.5 degF, 29.18 inHg, 42 %RH, 1.1620 kg/m3
  leak      1.8 cfm at 28 inH2O
  mounting  entry radiused, adapter 4.030 in

  corrected flow at 28 inH2O, air of the day; ±U: expanded uncertainty of one reading (k = 2)

                     corrected                     Cd     Cd      Cd     Cd  velocity
   lift  depression       flow     ±U    L/D  curtain    gap  throat   head     pinch  settle  remarks
   [in]     [inH2O]      [cfm]  [cfm]                                          [ft/s]     [s]
  0.100        28.0       56.6    1.4  0.050    0.619  0.885   0.164  0.123      66.3     1.4
  0.200        28.0      123.8    1.6  0.099    0.677  0.848   0.359  0.268     144.9     1.5
  0.300        27.9      185.9    1.7  0.149    0.678  0.796   0.539  0.403     217.3     1.5
  0.400        28.0      228.0    1.7  0.198    0.624  0.708   0.661  0.494     266.9     1.6  fall-back
  0.500        28.0      224.3    1.6  0.248    0.491  0.650   0.650  0.486     262.6     2.3  heard it tear
  0.600        28.0      223.1    1.6  0.297    0.407  0.647   0.647  0.483     261.2     2.2

  peak 228.0 cfm at 0.400 in
  mean 180.4 cfm over lift 0.100 to 0.600 in (its thirds: 111.9, 204.8, 224.4 cfm)
  time taken 10.5 s
`,
    );
  });

  test("says why a row is void, and adds up the times of all rows", () => {
    const out = tableText(tableInput(SHORT_SIDE));
    expect(out).toContain("     -    void: belt slipped\n");
    expect(out).toContain("time taken 4.4 s\n");
  });

  test("says what was assumed and in which air the flow is", () => {
    const bare = tableText(
      tableInput("bench b\nshows flow\nrun r\nbench b\nlift[in] depression[inH2O] flow[cfm]\n.5 28 200"),
    );
    checkLine(bare, "assumed", [
      "assumed",
      "target 28 inH2O, air isa, no leak, repeatability 1 %, direction draws",
    ]);
    checkLine(tableText(tableInput("run r")), "assumed", [
      "assumed",
      "target 28 inH2O, air isa, no leak, direction draws",
    ]);
    checkLine(bare, "mounting", ["mounting", "entry not stated, stub not stated"]);
    const quoted = smallRecord({
      session: ["target 25 inH2O", "quote 28 inH2O", "reference isa"],
      rows: ["0.1 25 50"],
    });
    expect(tableText(tableInput(quoted))).toContain("corrected flow at 28 inH2O, in isa;");
    checkLine(tableText(tableInput(quoted)), "target", ["target", "25 inH2O"]);
  });

  test("tells a bench that is not found from one that nobody names", () => {
    checkLine(tableText(tableInput("run r\nbench gone")), "bench", ["bench", "gone not found"]);
    checkLine(tableText(tableInput("run r")), "bench", ["bench", "not stated"]);
  });

  test("calls air without humidity dry, and names the instruments that were read", () => {
    const air = (words: string) =>
      tableText(tableInput(smallRecord({ session: ["leak none", `air ${words}`], rows: ["0.1 28 50"] })));
    checkLine(air("20 degC 101325 Pa"), "assumed", ["assumed", "target 28 inH2O, dry air"]);
    for (const moist of ["50 %RH", "dew-point 10 degC", "wet-bulb 15 degC"]) {
      checkLine(air(`20 degC 101325 Pa ${moist}`), "assumed", ["assumed", "target 28 inH2O"]);
    }
    checkLine(air("20 degC altimeter 1013 hPa elevation 0 m wet-bulb 15 degC"), "air", [
      "air",
      expect.stringMatching(
        /^20 degC, altimeter 1013 hPa, elevation 0 m, wet-bulb 15 degC, 1\.\d{4} kg\/m3$/,
      ),
    ]);
  });

  test("echoes written digits and stands points under each other", () => {
    const out = tableText(tableInput(smallRecord({ port: [], rows: [".5 28 200", "0.525 27.95 201.5"] })));
    expect(out).toContain("\n   .5         28         200.0    2.9\n  0.525       27.95      201.7    2.0\n");
  });

  test("lists averaged stations only where there are several readings, with their smaller uncertainty", () => {
    const out = tableText(
      tableInput(smallRecord({ rows: ["0.1 28 50.0", "0.2 28 100.0", "0.2 28 101.0", "0.1 28 51.0"] })),
    );
    checkLine(out, "0.2  rising", ["0.2", "rising", "2", "100.5", "1.6"]);
    expect(out).not.toMatch(/0\.1 {2}(rising|falling)/);
    expect(tableText(tableInput(AS_CAST))).not.toContain("averaged");
  });

  test("says so where there are no readings and no runs", () => {
    expect(tableText(tableInput("run r"))).toContain("\n  no readings\n");
    expect(tableText(tableInput(""))).toBe("a.headnote: no runs\n");
  });

  describe("of the cam event says", () => {
    const text = (lift: string, rows: readonly string[], port: readonly string[] = []) =>
      tableText(
        tableInput(
          smallRecord({
            port: ["of h", "side intake", ...port],
            rows,
            more: `engine e\ncam c1\ncam c1 "c"\nside intake\n${lift}\nhead h\nengine e`,
          }),
        ),
      );
    const HARMONIC = "lift 0.2 in\nlaw harmonic";
    const RAMP = ["0.1 28 50", "0.2 28 100"];

    test("its mean, and how much of it no reading bears out", () => {
      // Flow is 500 cfm per inch of lift, and a symmetric law's mean lift is half its peak, below which it is half the time.
      expect(text(HARMONIC, RAMP)).toContain(
        "mean over the cam event 50.0 cfm (50.0 % of it below 0.100 in, on a straight line from nothing at lift 0)\n",
      );
    });

    test("why there is no mean", () => {
      const none = (why: string) => `  no mean over the cam event: ${why}\n`;
      expect(text(HARMONIC, ["0.2 28 100"])).toContain(none("fewer than two lifts were read"));
      expect(text("lift 0.25 in\nlaw harmonic", RAMP)).toContain(
        none("cam c1 lifts the valve to 0.250 in, the last reading is at 0.200 in"),
      );
      expect(text("lift 0.2 in", RAMP)).toContain(
        none("cam c1 has no lifts by rising angle that open the valve"),
      );
      // A quarter of 0.6 in.
      expect(text(HARMONIC, ["0.16 28 5", "0.2 28 10"], ["valve 0.6 in"])).toContain(
        none("the first reading is at 0.160 in; from lift 0 flow goes with lift only up to 0.150 in"),
      );
    });

    test("nothing where there is no cam", () => {
      expect(tableText(tableInput(AS_CAST))).not.toContain("cam event");
    });
  });

  test.each(HOSTILE)("lets %j neither act nor break the table", (hostile) => {
    const text = smallRecord({
      run: [`stage "${hostile}"`],
      rows: [`0.1 28 50 "${hostile}"`, `0.2 28 60 void "${hostile}"`],
    });
    const out = tableText(tableInput(text, () => [hostile]));
    expect(out).not.toMatch(/[^\P{Cc}\n]|\p{Bidi_C}/u);
    expect(out).not.toMatch(/ \n/);
    expect(out.endsWith("\n")).toBe(true);
  });
});
