// Sides of a comparison: files, runs in them, and files as git has them.
import { execFileSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { inShop, type Shop } from "../kit/command.ts";
import { type RunParts, runsText } from "../kit/two-runs.ts";

const points = (factor: number): RunParts["points"] => [
  [0.1, 55 * factor],
  [0.2, 108 * factor],
  [0.3, 150 * factor],
];
const one = (factor: number) => runsText([{ points: points(factor) }]);
const two = (factor: number) => runsText([{ points: points(1) }, { points: points(factor) }]);

function git(folder: string, ...args: readonly string[]): void {
  const who = ["-c", "user.name=shop", "-c", "user.email=shop@localhost", "-c", "commit.gpgsign=false"];
  execFileSync("git", [...who, ...args], { cwd: folder, stdio: "ignore" });
}

function commit(shop: Shop): void {
  git(shop.folder, "add", "-A");
  git(shop.folder, "commit", "-q", "-m", "a reading");
}

async function gains(shop: Shop, ...args: readonly string[]): Promise<readonly (number | undefined)[]> {
  const { out, err } = await shop.headnote(["compare", ...args, "--format", "json"]);
  expect(err).toBe("");
  return JSON.parse(out).comparisons.map((entry: { mean: { gain: number } | null }) =>
    entry.mean === null ? undefined : Number(entry.mean.gain.toFixed(4)),
  );
}

describe("a side of a comparison", () => {
  test("is a file with one run, or a run of a file behind a #", async () => {
    await inShop({ "a.headnote": one(1), "b.headnote": one(1.05), "c.headnote": two(1.1) }, async (shop) => {
      expect(await gains(shop, "a.headnote", "b.headnote")).toEqual([0.05]);
      expect(await gains(shop, "a.headnote", "b.headnote", "c.headnote#r2")).toEqual([0.05, 0.1]);
      expect(await gains(shop, "c.headnote#r2", "c.headnote#r1")).toEqual([Number((1 / 1.1 - 1).toFixed(4))]);
    });
  });

  test("whose name holds a # or a colon is a file where there is such a one", async () => {
    await inShop({ "a#1.headnote": one(1), "b: ported.headnote": two(1.05) }, async (shop) => {
      expect(await gains(shop, "a#1.headnote", "b: ported.headnote#r2")).toEqual([0.05]);
    });
  });

  test.each([
    ["nowhere.headnote", "nowhere.headnote: it is not there"],
    ["c.headnote", "c.headnote: say which run behind a #: r1, r2"],
    ["c.headnote#r3", "c.headnote#r3: there is no run 'r3' in it; did you mean 'r1'?"],
    ["c.headnote#", "there is no run ''"],
    ["empty.headnote", "empty.headnote: there is no run in it"],
    ["HEAD:c.headnote#r1", "HEAD:c.headnote#r1: it lies in no git repository"],
  ])("that is not to be had is said so: %s", async (side, said) => {
    const files = { "a.headnote": one(1), "c.headnote": two(1.1), "empty.headnote": "headnote 1\n" };
    await inShop(files, async ({ headnote }) => {
      const { code, out, err } = await headnote(["compare", "a.headnote", side]);
      expect(code).toBe(2);
      expect(out).toBe("");
      expect(err).toContain(said);
    });
  });

  test("alone is nothing to compare", async () => {
    await inShop({ "a.headnote": one(1) }, async ({ headnote }) => {
      const { code, err } = await headnote(["compare", "a.headnote"]);
      expect(code).toBe(2);
      expect(err).toContain("run");
    });
  });
});

describe("a file as git has it", () => {
  test("says of an edit that no reading was taken again", async () => {
    await inShop({ "a.headnote": one(1) }, async (shop) => {
      git(shop.folder, "init", "-q");
      commit(shop);
      const compared = () => shop.headnote(["compare", "HEAD:a.headnote", "a.headnote"]);
      const same = "all readings are the same in both, taken once";
      expect(await compared()).toMatchObject({ code: 0, out: expect.stringContaining(same) });
      shop.write("a.headnote", one(1).replace("leak none", "leak 0.1 cfm at 28 inH2O"));
      expect(await compared()).toMatchObject({
        code: 1,
        out: expect.stringContaining("-0.1 % (the same readings)"),
      });
      shop.write("a.headnote", one(1).replace("150.0", "151.0"));
      expect((await compared()).out).toContain("2 of 3 readings are the same in both");
    });
  });

  test("is read at its revision, with its includes as they stood then", async () => {
    await inShop({ "heads/a.headnote": one(1) }, async (shop) => {
      git(shop.folder, "init", "-q");
      const [bench = "", rest = ""] = one(1).split(/(?=session )/);
      shop.write("shop.headnote", bench);
      shop.write("heads/a.headnote", `headnote 1\ninclude "../shop.headnote"\n${rest}`);
      commit(shop);
      shop.write("shop.headnote", bench.replace("repeat 0.4 %", "repeat 0.2 %"));
      const [, again = ""] = one(1.01).split(/(?=session )/);
      shop.write("heads/a.headnote", `headnote 1\ninclude "../shop.headnote"\n${again}`);
      commit(shop);
      expect(await gains(shop, "HEAD~1:heads/a.headnote", "HEAD:heads/a.headnote")).toHaveLength(1);
      const { out } = await shop.headnote([
        "compare",
        "HEAD~1:heads/a.headnote#r1",
        "heads/a.headnote",
        "--format",
        "json",
      ]);
      const report = JSON.parse(out);
      expect(report.baseline.revision).toBe("HEAD~1");
      expect(report.comparisons[0].run.revision).toBeNull();
      // 1.96 · sqrt(0.4² + 0.2²) %, by hand: the bench repeated to 0.4 % then.
      expect(report.comparisons[0].lifts[0].gain.chance).toBeCloseTo(1.96 * 0.01 * Math.hypot(0.4, 0.2), 9);
    });
  });

  test("is found from a folder below, and before it was taken away", async () => {
    await inShop({ "a.headnote": one(1), "b.headnote": one(1.05) }, async (shop) => {
      git(shop.folder, "init", "-q");
      commit(shop);
      execFileSync("git", ["rm", "-q", "a.headnote"], { cwd: shop.folder });
      mkdirSync(join(shop.folder, "below"));
      const { code, out } = await shop.headnote(["compare", "HEAD:../a.headnote", "../b.headnote"], {
        cwd: join(shop.folder, "below"),
      });
      expect(code).toBe(1);
      expect(out).toContain("../a.headnote at HEAD");
    });
  });

  test.each([
    ["v9:a.headnote", "v9:a.headnote: there is no such revision"],
    ["--output=x:a.headnote", "there is no such revision"],
    ["$(touch x):a.headnote", "there is no such revision"],
    ["HEAD:b.headnote", "HEAD:b.headnote: it was not there at that revision"],
    ["HEAD:../a.headnote", "it lies in no git repository"],
    ["HEAD:bytes.headnote", "HEAD:bytes.headnote: it is not UTF-8 text"],
  ])("that is not to be had is said so: %s", async (side, said) => {
    const files = { "a.headnote": one(1), "bytes.headnote": new Uint8Array([0x68, 0xff, 0xfe]) };
    await inShop(files, async (shop) => {
      git(shop.folder, "init", "-q");
      commit(shop);
      const { code, err } = await shop.headnote(["compare", "--", "a.headnote", side]);
      expect(code).toBe(2);
      expect(err).toContain(said);
      await expect(async () => shop.read("x")).rejects.toThrow();
    });
  });
});

describe("the exit code", () => {
  const codeOf = async (first: string, second: string, ...more: readonly string[]) => {
    let code = Number.NaN;
    await inShop({ "a.headnote": first, "b.headnote": second }, async ({ headnote }) => {
      code = (await headnote(["compare", "a.headnote", "b.headnote", ...more])).code;
    });
    return code;
  };

  test("is 0 for what chance may do, and 1 for a difference", async () => {
    expect(await codeOf(one(1), one(1.001))).toBe(0);
    expect(await codeOf(one(1), one(1.05))).toBe(1);
    expect(await codeOf(one(1), one(0.95))).toBe(1);
  });

  test("is 1 for runs that were not read alike, also where their gain is told anyway", async () => {
    const bare = one(1).replace("entry clay", "entry bare");
    expect(await codeOf(one(1), bare)).toBe(1);
    expect(await codeOf(one(1), bare, "--anyway")).toBe(1);
  });

  test("is that of agreement for one port on two benches: scales may differ by what both state", async () => {
    const south = (factor: number) => runsText([{ points: points(factor), bench: "south" }]);
    expect(await codeOf(one(1), south(1.012))).toBe(0);
    expect(await codeOf(one(1), south(1.03))).toBe(1);
  });
});

describe("the picture", () => {
  test("shows the runs, the baseline greyed", async () => {
    await inShop({ "a.headnote": one(1), "b.headnote": one(1.05) }, async ({ headnote, read }) => {
      const { code, err } = await headnote(["compare", "a.headnote", "b.headnote", "-o", "gain.svg"]);
      expect(code).toBe(1);
      expect(err).toBe("wrote gain.svg\n");
      expect(read("gain.svg")).toMatch(/^<svg/);
      expect(read("gain.svg")).toContain("b.headnote#r1");
    });
  });

  test("is not drawn of runs that were not read alike, unless it is wanted", async () => {
    const files = { "a.headnote": one(1), "b.headnote": one(1.05).replace("entry clay", "entry bare") };
    await inShop(files, async ({ headnote, read }) => {
      const refused = await headnote(["compare", "a.headnote", "b.headnote", "-o", "gain.svg"]);
      expect(refused.code).toBe(2);
      expect(refused.err).toContain("--anyway draws them");
      await expect(async () => read("gain.svg")).rejects.toThrow();
      expect(
        (await headnote(["compare", "a.headnote", "b.headnote", "-o", "gain.svg", "--anyway"])).code,
      ).toBe(1);
    });
  });

  test("needs an ending that is a picture's", async () => {
    await inShop({ "a.headnote": one(1), "b.headnote": one(1.05) }, async ({ headnote }) => {
      const { code, err } = await headnote(["compare", "a.headnote", "b.headnote", "-o", "gain.doc"]);
      expect(code).toBe(2);
      expect(err).toContain(".svg, .png or .json");
    });
  });
});
