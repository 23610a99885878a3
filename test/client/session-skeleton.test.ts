// The text that a new session starts with.
import { describe, expect, test } from "vitest";
import { pathFrom, sessionFileName, sessionSkeleton } from "../../client/session-skeleton.ts";
import { format } from "../../grammar/format.ts";
import { open } from "../kit/service.ts";

const CHOICE = { date: "2026-11-25", bench: "north", port: "intake", stage: "as cast", includes: [] };
const SHOP = `headnote 1
bench north
  shows flow
  repeat 0.35 %
port intake
  side intake
  valve 2.020 in
`;

/** What is found in a new session of this shop. */
function checkFindings(stage: string, like: string, expected: readonly string[]): void {
  const text = sessionSkeleton({ ...CHOICE, stage, includes: ["shop.headnote"] }, like);
  const { findings } = open(`${text}\n#- shop.headnote\n${SHOP}`);
  expect(findings.map(({ finding }) => finding.code)).toEqual(expected);
}

describe("a new session", () => {
  const toFillIn = ["missing-value", "missing-value", "missing-value"];

  test("names what was chosen, and is wrong in nothing but what must be read off the bench", () => {
    checkFindings("as cast", "", toFillIn);
  });

  test("takes any words for a stage", () => {
    checkFindings('short side "laid" back \\ 0.040', "", toFillIn);
    checkFindings("кромка", "", toFillIn);
  });

  test("stands in canonical form, up to the place of the first lift", () => {
    const text = sessionSkeleton(CHOICE, "");
    expect(text.endsWith("\n  ")).toBe(true);
    expect(format(text)?.trimEnd()).toBe(text.trimEnd());
  });

  test("invents no air, leak or entry", () => {
    expect(sessionSkeleton(CHOICE, "")).toMatch(/^ {2}air\n {2}leak\n {2}entry$/m);
  });

  test("has the columns and the target of the record that is open", () => {
    const like =
      "session 2026-01-01\n  target 3.0 kPa # ours\nrun r\n  lift[mm]  depression[kPa]  reading[%]  range\r\n  1.0 3.0 50 2\r\n";
    const text = sessionSkeleton(CHOICE, like);
    expect(text).toContain("\n  target     3.0 kPa\n");
    expect(text.endsWith("\n  lift[mm]  depression[kPa]  reading[%]  range\n  ")).toBe(true);
  });
});

describe("the file of a new session", () => {
  test("is named for the day and the stage, in letters that every disk takes", () => {
    expect(sessionFileName({ date: "2026-11-25", stage: "Short side / 0.040" })).toBe(
      "2026-11-25-short-side-0-040",
    );
    expect(sessionFileName({ date: "2026-11-25", stage: "кромка" })).toBe("2026-11-25");
    expect(sessionFileName({ date: "2026-11-25", stage: `../${"x".repeat(300)}` })).toHaveLength(51);
  });

  test("takes other files in by the way from its own folder", () => {
    expect(pathFrom("/shop/a114", "/shop/shop.headnote")).toBe("../shop.headnote");
    expect(pathFrom("/shop/a114", "/shop/a114/head.headnote")).toBe("head.headnote");
    expect(pathFrom("/shop/a/b", "/shop/c/d.headnote")).toBe("../../c/d.headnote");
    expect(pathFrom("/", "/shop.headnote")).toBe("shop.headnote");
  });
});
