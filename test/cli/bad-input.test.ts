// What a user should never meet: stack traces, half-written files, and commands that fall over what they are given.
import { mkdirSync, readdirSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inShop, type Ran, type Shop } from "../kit/command.ts";

const ROUGH = "headnote 1\nbench b\n shows flow\n";
const NEAT = "headnote 1\nbench b\n  shows      flow\n";

/** Characters that act on a terminal: controls but for the line end, and marks that turn the direction of a text. */
const ACTING = /[\p{Cc}\u202a-\u202e\u2066-\u2069](?<!\n)/u;

function checkSpoken({ code, out, err }: Ran, codes: readonly number[]): void {
  expect(codes).toContain(code);
  expect(out + err).not.toMatch(/^\s+at .*:\d+:\d+/m);
  expect(out + err).not.toContain("please report");
}

async function checkEverything(shop: Shop, path: string): Promise<void> {
  for (const format of ["text", "json", "sarif", "github", "junit", "markdown"]) {
    checkSpoken(await shop.headnote(["check", path, "--format", format]), [0, 1, 2]);
  }
  for (const format of ["text", "json", "csv", "markdown"]) {
    checkSpoken(await shop.headnote(["table", path, "--format", format]), [0, 2]);
  }
  checkSpoken(await shop.headnote(["format", path, "--check"]), [0, 1, 2]);
}

describe("a file of anything", () => {
  test("is answered with findings or a sentence", async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), (bytes) =>
        inShop({ "x.headnote": bytes }, (shop) => checkEverything(shop, "x.headnote")),
      ),
      { numRuns: 25 },
    );
  });

  test.each([
    ["nothing", ""],
    ["zeros", "headnote 1\n\0\0\0 run\0 x\n"],
    ["a line of a megabyte", `headnote 1\nrun ${"x".repeat(1_000_000)}\n`],
    ["escapes", 'headnote 1\nrun \u001b[31mred "\u001b]0;title\u0007"\n'],
  ])("of %s is", async (_, text) => {
    await inShop({ "x.headnote": text }, (shop) => checkEverything(shop, "x.headnote"));
  });

  test("of control characters never sends one to the terminal", async () => {
    await inShop(
      { "x.headnote": 'headnote 1\nrun r "\u001b[2J\u009b31m\u202e"\n  x\u001b 1\n' },
      async (shop) => {
        for (const args of [
          ["check", "x.headnote"],
          ["table", "x.headnote"],
        ]) {
          const { out, err } = await shop.headnote(args);
          expect(out + err).not.toMatch(ACTING);
        }
      },
    );
  });

  test("of 100 000 rows at one lift and at as many is computed", async () => {
    const head =
      "headnote 1\nbench b\n  shows flow\nsession 2026-03-02\n  bench b\nrun r\n  lift[mm] depression[inH2O] flow[cfm]\n";
    const rows = Array.from(
      { length: 100_000 },
      (_, i) => `  ${i % 2 === 0 ? "5.000" : i / 1000} 28.0 200.${i % 10}`,
    );
    await inShop({ "x.headnote": `${head}${rows.join("\n")}\n` }, async (shop) => {
      checkSpoken(await shop.headnote(["check", "x.headnote", "--format", "json"]), [0, 1]);
    });
  }, 30_000);
});

describe("a path that is no record", () => {
  test("is answered with exit 2 and a sentence: missing, a folder, a link to nothing, a link to itself", async () => {
    await inShop({}, async (shop) => {
      mkdirSync(join(shop.folder, "folder.headnote"));
      symlinkSync("nowhere", join(shop.folder, "dangling.headnote"));
      symlinkSync("loop.headnote", join(shop.folder, "loop.headnote"));
      for (const path of [
        "missing.headnote",
        "folder.headnote",
        "dangling.headnote",
        "loop.headnote",
        "*.none",
      ]) {
        for (const command of ["check", "format", "table"]) {
          const ran = await shop.headnote([command, path]);
          checkSpoken(ran, [2]);
          expect(ran.err).toMatch(/^headnote: .+/);
        }
      }
    });
  });

  test("does not keep the others from being checked", async () => {
    await inShop({ "good.headnote": NEAT }, async (shop) => {
      const { code, out } = await shop.headnote(["check", "missing.headnote", "good.headnote"]);
      expect([code, out]).toEqual([2, "1 file, no findings\n"]);
    });
  });
});

describe("includes", () => {
  test("in a circle end, each with a finding", async () => {
    const files = {
      "a.headnote": 'headnote 1\ninclude "b.headnote"\n',
      "b.headnote": 'headnote 1\ninclude "c.headnote"\n',
      "c.headnote": 'headnote 1\ninclude "a.headnote"\ninclude "c.headnote"\n',
    };
    await inShop(files, async (shop) => {
      const { code, out } = await shop.headnote(["check"]);
      expect(code).toBe(1);
      expect(out.match(/include-cycle/g)).toHaveLength(4);
    });
  });

  test("do not leave the workspace", async () => {
    const files = {
      "in/headnote.json": "{}",
      "in/a.headnote": 'headnote 1\ninclude "../b.headnote"\n',
      "b.headnote": NEAT,
    };
    await inShop(files, async (shop) => {
      const { out } = await shop.headnote(["check", "in"]);
      expect(out).toContain("error[include-outside]");
    });
  });
});

describe("formatting a file", () => {
  test("that cannot be written leaves it as it was, with nothing beside it", async () => {
    await inShop({ "x.headnote": ROUGH }, async (shop) => {
      const full = () => {
        throw Object.assign(new Error("full"), { code: "ENOSPC" });
      };
      const ran = await shop.headnote(["format", "x.headnote"], { writeBytes: full });
      checkSpoken(ran, [2]);
      expect(ran.err).toContain("the disk is full");
      expect(shop.read("x.headnote")).toBe(ROUGH);
      expect(readdirSync(shop.folder)).toEqual(["x.headnote"]);
    });
  });

  test("that takes its bytes one by one writes all of them, and keeps its mode", async () => {
    await inShop({ "x.headnote": ROUGH }, async (shop) => {
      const { mode } = statSync(join(shop.folder, "x.headnote"));
      const { writeSync } = await import("node:fs");
      await shop.headnote(["format"], { writeBytes: (file, bytes) => writeSync(file, bytes.subarray(0, 1)) });
      expect(shop.read("x.headnote")).toBe(NEAT);
      expect(statSync(join(shop.folder, "x.headnote")).mode).toBe(mode);
    });
  });

  test("that is no UTF-8 leaves it alone", async () => {
    await inShop({ "x.headnote": new Uint8Array([104, 195, 40, 10]) }, async (shop) => {
      const before = shop.read("x.headnote");
      checkSpoken(await shop.headnote(["format", "x.headnote"]), [1, 2]);
      expect(shop.read("x.headnote")).toBe(before);
    });
  });

  test("through a link changes its target and keeps the link", async () => {
    await inShop({ "real.headnote": ROUGH }, async (shop) => {
      symlinkSync("real.headnote", join(shop.folder, "link.headnote"));
      await shop.headnote(["format", "link.headnote"]);
      expect(shop.read("real.headnote")).toBe(NEAT);
    });
  });
});

describe("settings", () => {
  const WARM = "headnote 1\nbench b\n  settle 1.6 s\n";

  test("that cannot be used are said, with exit 2", async () => {
    for (const settings of [
      "{",
      '{ "severity": { "no-such": "off" } }',
      '{ "limits": { "adapter": "5 inHg" } }',
      "[]",
    ]) {
      await inShop({ "headnote.json": settings, "x.headnote": NEAT }, async (shop) => {
        const ran = await shop.headnote(["check"]);
        checkSpoken(ran, [2]);
        expect(ran.err).toContain("headnote.json");
      });
    }
  });

  test("weigh and silence findings", async () => {
    for (const [level, code] of [
      ["off", 0],
      ["hint", 0],
      ["error", 1],
    ] as const) {
      const settings = JSON.stringify({ severity: { "missing-line": level } });
      await inShop({ "headnote.json": settings, "x.headnote": WARM }, async (shop) => {
        expect((await shop.headnote(["check"])).code).toBe(code);
      });
    }
  });
});

describe("standard input", () => {
  const given = (text: string) => ({ stdin: async () => new TextEncoder().encode(text) });

  test("is checked and formatted like a file", async () => {
    await inShop({ "shop.headnote": NEAT }, async (shop) => {
      const record = 'headnote 1\ninclude "shop.headnote"\n';
      const checked = await shop.headnote(["check", "-", "--stdin-name", "new.headnote"], given(record));
      expect([checked.code, checked.out]).toEqual([0, "1 file, no findings\n"]);
      expect((await shop.headnote(["format", "-"], given(ROUGH))).out).toBe(NEAT);
    });
  });
});
