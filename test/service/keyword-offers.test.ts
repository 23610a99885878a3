import { describe, expect, test } from "vitest";
import { labelsAt, offersAt } from "../kit/offers.ts";

const item = (fixture: string, label: string) => offersAt(fixture).find((offer) => offer.label === label);

describe("keywords", () => {
  test("in front of a heading are those of the block above it", () => {
    const found = labelsAt("headnote 1\nbench b\n  shows flow\n $0run r\n  cylinder 3\n");
    expect(found).toContain("within");
    expect(found).not.toContain("shows");
    expect(found).not.toContain("cylinder");
  });

  test("that may stand again come behind those that are not there yet", () => {
    const found = labelsAt("headnote 1\nport p\n  section pinch 2 in2\n  $0\n");
    expect(found.indexOf("section")).toBeGreaterThan(found.indexOf("throat"));
    expect(found.indexOf("section")).toBeLessThan(found.indexOf("session"));
  });

  test("count what the line itself states for nothing", () => {
    expect(labelsAt("headnote 1\nbench b\n  shows flow\n  se$0ttle 1.6 s\n")).toContain("settle");
    expect(labelsAt("headnote 1\nbench b\n  shows flow\n  settle 1.6 s\n  $0\n")).not.toContain("settle");
  });

  test("of blocks are in the order of what the file has, and what follows a session is readings", () => {
    const defined = labelsAt("headnote 1\nplate a\nplate b\n$0\n");
    expect(defined.slice(0, 2)).toEqual(["plate", "bench"]);
    expect(defined.indexOf("session")).toBeLessThan(defined.indexOf("run"));
    const session = "headnote 1\nbench b\nsession 2026-03-02\n";
    expect(labelsAt(`${session}run a\nrun b\ntrace 0.3 in of a\n$0\n`).slice(0, 4)).toEqual([
      "run",
      "trace",
      "bench",
      "ladder",
    ]);
    expect(labelsAt(`${session}$0\n`)).not.toContain("session");
    expect(labelsAt("headnote 1\nses$0sion 2026-03-02\n")).toContain("session");
  });

  test("offer the version line only to a file that has none", () => {
    expect(labelsAt("$0\nbench b\n")).toContain("headnote");
    expect(labelsAt("# a shop\nheadnote 1\n$0\n")).not.toContain("headnote");
  });

  test("come with their form, what they are for and an example", () => {
    expect(item("headnote 1\nport p\n  $0\n", "seat")).toMatchObject({
      detail: "seat ANGLE [width LENGTH]",
      documentation: expect.stringMatching(/```headnote\nseat .*\n```$/),
    });
  });

  test("of a text put the cursor between its quotes where the editor can", () => {
    expect(item("headnote 1\nrun r\n  $0\n", "stage")).toMatchObject({
      insert: "stage ",
      snippet: 'stage "$1"',
    });
    expect(item("headnote 1\nrun r\n  $0\n", "cylinder")).not.toHaveProperty("snippet");
  });
});
