// What is wrong with the values of a line is said once, where it stands, in words a porter understands.
import { describe, expect, test } from "vitest";
import { applyEdits } from "../../shared/text/edit.ts";
import { checkReading, outlineOf, readingFindings, readingMessages } from "../kit/check.ts";

/** Checks what one line of a block reports, as `message; help`. */
function checkWords(opening: string, line: string, ...expected: string[]): void {
  expect(readingMessages(`headnote 1\n${opening}\n  ${line}\n`)).toEqual(expected);
}

/** Checks what a line becomes when all its fixes are applied. */
function checkFixed(opening: string, line: string, expected: string): void {
  const text = `headnote 1\n${opening}\n${line}\n`;
  const lines = text.split("\n");
  const edits = readingFindings(outlineOf(text)).flatMap(({ fix }) => fix?.edits ?? []);
  expect(applyEdits(lines, edits)[lines.length - 2]).toBe(expected);
}

const session = "session 2026-11-20";

describe("a session's line that is not right says so", () => {
  test.each([
    [
      "leak 1.8 cfm",
      "'leak' needs a pressure with its unit behind 'at'; the line reads: leak FLOW|none [at PRESSURE] [exponent NUMBER]",
    ],
    [
      "leak 1.8 cfm at",
      "'leak' needs a pressure with its unit behind 'at'; the line reads: leak FLOW|none [at PRESSURE] [exponent NUMBER]",
    ],
    [
      "leak none at 28 inH2O",
      "'leak' does not take 'at 28 inH2O' here; the line reads: leak FLOW|none [at PRESSURE] [exponent NUMBER]",
    ],
    [
      "stub none length 6 in",
      "'stub' does not take 'length 6 in' here; the line reads: stub LENGTH|none [length LENGTH]",
    ],
    ["target 28", "'28' has no unit; a pressure is needed; write the unit behind it: "],
    ["target 28 cfm", "'cfm' is a volume flow; a pressure is needed; units that fit: "],
    ["entry radius", "'radius' is none of bare, clay, radiused, manifold; did you mean radiused?"],
    [
      "entry sharp",
      "'sharp' is none of bare, clay, radiused, manifold; write one of bare, clay, radiused, manifold",
    ],
    ["operator bench hand", "'bench hand' is not a text in quotes; did you mean \"bench hand\"?"],
    ["adapter wide", "'wide' is not a number; a length is needed; write digits with a point"],
    ["leak non", "'non' is not a number; a volume flow or none is needed; write none"],
    ["reference isaa", "'isaa' is none of isa, iso-13443, din-1343, iupac-stp, "],
    [
      "air isa",
      "'isa' is not a number; a temperature or a pressure or a relative humidity or dew-point or wet-bulb or altimeter or elevation is needed; write digits with a point",
    ],
    [
      "air 20 degC 1000 hPa dewpoint 12 degC",
      "'dewpoint' is not a number; a relative humidity or dew-point or wet-bulb or altimeter or elevation is needed; write dew-point",
    ],
    ['adapter "4.030" in', "'\"4.030\"' is not a number; write 4.030"],
    ["reference 20 degC", "'reference' needs a pressure; the line reads: reference AIR"],
    ['reference "isa"', "'\"isa\"' cannot be a name; begin with a letter or digit"],
    [
      "reference 20 101.325 kPa",
      "'20' has no unit; a temperature or a pressure or a relative humidity is needed",
    ],
    ["air", "'air' needs a temperature, a station pressure; the line reads: air "],
    [
      "air 71.5 degF altimeter 30.1 inHg",
      "'air' needs a length with its unit behind 'elevation'; the line reads: air ",
    ],
    ["air 71.5 degF 29.18 inHg 42 %RH dew-point 55 degF", "'air' does not take 'dew-point 55 degF' here; "],
    ["stations 0.1 in to 0.6 in", "'stations' needs a length with its unit behind 'by'; "],
    ["stations 0.1 in too 0.6 in by 0.1 in", "'stations' does not take 'too 0.6 in by 0.1 in' here; "],
    ["bench no/rth", "'no/rth' cannot be a name; "],
    [
      "within 0.2 inH2O of the target",
      "'within' does not take 'of the target' here; the line reads: within PRESSURE",
    ],
  ])("%s", (line, expected) => {
    const [words, ...more] = readingMessages(`headnote 1\n${session}\n  ${line}\n`);
    expect(more).toEqual([]);
    expect(words?.slice(0, expected.length)).toBe(expected);
  });
});

describe("a session's line that is right says nothing", () => {
  test.each([
    "air 71.5 degF 29.18 inHg 42 %RH",
    "air 42 %RH 29.18 inHg 71.5 degF",
    "air 42%RH 29.18inHg 71.5degF",
    "air dew-point 55 degF 29.18 inHg 71.5 degF",
    "air 71.5 degF altimeter 30.1 inHg elevation 900 ft wet-bulb 60 degF",
    "air 71.5 degF 29.18 inHg elevation 900 ft",
    "leak none",
    "leak 1.8 cfm exponent 0.6 at 28 inH2O",
    "stub none",
    "reference 20 degC 101.325 kPa",
    "reference 101.325 kPa 0 %RH 20 degC",
    "stations 0.1 in by 0.1 in to 0.6 in",
    "adapter 4-1/32 in",
    "adapter .5in",
  ])("%s", (line) => checkWords(session, line));
});

describe("a bench shows", () => {
  test.each([
    "flow",
    "flow at 28 inH2O",
    "flow in isa",
    "flow in 20 degC 101.325 kPa at 28 inH2O",
    "flow at 28 inH2O in 20 degC 101.325 kPa 0 %RH",
    "percent in isa",
    "signal in isa",
    "drop",
    "meter-flow",
  ])("%s", (what) => checkWords("bench b", `shows ${what}`));

  test.each([
    ["percent at 28 inH2O in isa", "at 28 inH2O"],
    ["drop in isa", "in isa"],
    ["meter-flow in 20 degC 101.325 kPa", "in 20 degC 101.325 kPa"],
    ["signal at 28 inH2O", "at 28 inH2O"],
  ])("%s is too much", (what, extra) => {
    const form = "shows flow|meter-flow|percent|drop|signal [at PRESSURE] [in AIR]";
    checkWords("bench b", `shows ${what}`, `'shows' does not take '${extra}' here; the line reads: ${form}`);
  });
});

describe("fixes mend", () => {
  test.each([
    ['  valve 2.020"', "  valve 2.020 in"],
    ["  valve 2.020inch", "  valve 2.020 in"],
    ["  valve 2.020 Inch", "  valve 2.020 in"],
    ["  valve 2,020 in", "  valve 2.020 in"],
    ["  valve +2.020 imch", "  valve 2.020 in"],
    ["  seat 45 deg widht 0.060 in", "  seat 45 deg width 0.060 in"],
    ["  sied intake", "  side intake"],
    ["  side intaek", "  side intake"],
  ])("%s", (line, expected) => checkFixed("port p\n  side intake\n  valve 2 in\nport p", line, expected));

  test.each([
    ['  stage as "cast"', '  stage "as" "cast"'],
    ["  stage short side \\ laid", '  stage "short side \\\\ laid"'],
    ['  lift["]  depression["H2O]', "  lift[in]  depression[inH2O]"],
    ["  lift[inch]  depression[inH2O]", "  lift[in]  depression[inH2O]"],
    ["  lift  depression", "  lift[in]  depression[inH2O]"],
    ["  lift[in depression[inH2O", "  lift[in] depression[inH2O]"],
  ])("%s", (line, expected) => checkFixed("run r", line, expected));

  test.each([
    ["  0.300in 28.0", "  0.300 28.0"],
    ['  0.300" 28.0', "  0.300 28.0"],
    ["  0,300 28.", "  0.300 28"],
    ["  – −28.0", "  - -28.0"],
  ])("%s", (line, expected) => checkFixed("run r\n  lift[in]  depression[inH2O]", line, expected));
});

test("a line's every fault is marked where it stands", () => {
  checkReading(`
    headnote 1
    engine e
      bore 4,030 in 5 #
    #      ^^^^^ error[decimal-comma]
    #               ^ error[extra-value]
      speed 6200 rpms
    #            ^^^^ error[unknown-unit]
      speed 6200 mph
    #            ^^^ error[unknown-unit]
      cylinders 8.5
    #           ^^^ error[number-form]
      strok 3.480 in
    # ^^^^^ warning[unknown-keyword]
  `);
});
