import { describe, expect, test } from "vitest";
import { hover } from "../../server/service/hover.ts";
import { open } from "../kit/service.ts";

function hovered(fixture: string): { readonly text: string; readonly under: string } {
  const { analysis, position, text } = open(fixture);
  const found = hover(analysis, position);
  const line = text.split("\n")[position.line] ?? "";
  return { text: found?.text ?? "", under: line.slice(found?.span.from, found?.span.to) };
}

describe("hover of a quantity", () => {
  test("on its unit says what that is; on the number what it is in others", () => {
    const onUnit = hovered("headnote 1\nsession 2026-03-02\n  target 28 in$0H2O\n");
    expect(onUnit.under).toBe("inH2O");
    expect(onUnit.text).toContain("**inH2O** — a pressure; 1 inH2O = 249.08891 Pa");
    const onNumber = hovered("headnote 1\nsession 2026-03-02\n  target 2$08 inH2O\n");
    expect(onNumber.under).toBe("28 inH2O");
    // 28 inH2O = 6.97448948 kPa = 69.7448948 mbar, computed with mathjs.
    expect(onNumber.text).toContain("6.974 kPa = 69.74 mbar");
  });

  test("that is one word with its unit is one", () => {
    expect(hovered("headnote 1\nport p\n  valve 2.02$0in\n").under).toBe("2.02in");
  });

  test("of one among several names the one under the cursor", () => {
    expect(hovered("headnote 1\nsession 2026-03-02\n  air 20 degC 29.$092 inHg\n").under).toBe("29.92 inHg");
    expect(hovered("headnote 1\nport p\n  seat 45 deg width 1.$05 mm\n").under).toBe("1.5 mm");
  });
});

test("hover of a reference air says who defines it, and its density", () => {
  // 1.2250 kg/m3 printed in ISO 2533 for the ideal gas; 1.2255213 by CIPM-2007 at 15 degC and 101325 Pa, computed in Python.
  const { text, under } = hovered("headnote 1\nsession 2026-03-02\n  reference is$0a\n");
  expect(under).toBe("isa");
  expect(text).toBe("**isa** — ISO 2533, standard atmosphere at sea level: 15 degC, 101325 Pa; 1.2255 kg/m3");
  expect(hovered("headnote 1\nsession 2026-03-02\n  reference nowh$0ere\n").text).toBe("");
});

test("hover of one of several words says what is chosen with it", () => {
  const { text, under } = hovered("headnote 1\nsession 2026-03-02\n  entry radi$0used\n");
  expect(under).toBe("radiused");
  expect(text).toMatch(/^\*\*radiused\*\* — Entry of an intake port/);
});

describe("hover of a name", () => {
  const shop = 'headnote 1\n\nengine e "old"\n  bore 90 mm\n\n# The next one.\nengine f\n';

  test("says where it is defined, and shows no more than its block", () => {
    const there = hovered(`headnote 1\ninclude "s.headnote"\nhead h\n  engine $0e\n#- s.headnote\n${shop}`);
    expect(there.text).toBe(
      '**engine e** — old\n\n```headnote\nengine e "old"\n  bore 90 mm\n```\n\ndefined in line 3 of s\\.headnote',
    );
    expect(hovered(`${shop}head h\n  engine $0f\n`).text).toMatch(/\n\ndefined in line 7$/);
  });

  test("does not say so where it is itself the definition", () => {
    expect(hovered(shop.replace("engine e", "engine $0e")).text).not.toContain("defined in");
  });
});

test("hover of an allowed code works behind a line too", () => {
  const { text, under } = hovered("headnote 1\nsession 2026-03-02 # allow no-ben$0ch: borrowed\n");
  expect(under).toBe("no-bench");
  expect(text).toContain("**no-bench** — ");
});

test("hover of the version line and of an include says what they are for", () => {
  expect(hovered("head$0note 1\n").text).toContain("in which version of the format");
  const include = hovered('headnote 1\nbench b\ninc$0lude "s.headnote"\n');
  expect(include.under).toBe("include");
  expect(include.text).toContain("Takes in what another file defines");
});

describe("hover of an include", () => {
  const more = Array.from({ length: 14 }, (_, index) => `plate p${index}\n`).join("");
  const shop = `#- s.headnote\nheadnote 1\nbench a\nbench b_c\n${more}session 2026-03-02\n`;

  test("says what the file defines", () => {
    const { text, under } = hovered(`headnote 1\ninclude "s.$0headnote"\n${shop}`);
    expect(under).toBe('"s.headnote"');
    expect(text.split("\n\n")).toEqual([
      "**s\\.headnote**",
      "bench: a, b\\_c",
      "plate: p0, p1, p2, p3, p4, p5, p6, p7, p8, p9, p10, p11 and 2 more",
    ]);
  });
});
