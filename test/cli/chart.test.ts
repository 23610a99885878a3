// `headnote chart` writes the picture that the name asks for, of the runs that belong together.
import { chmodSync, existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { tracedRun } from "../../server/rules/examples.ts";
import { inShop, type Ran } from "../kit/command.ts";

const SHOP = "headnote 1\nbench b\n  shows      flow\n  repeat     0.3 %\n";
const rows = (flow: number) =>
  `\n  lift[in]  depression[inH2O]  flow[cfm]\n  0.100  28.0  ${flow}\n  0.200  28.0  ${2 * flow}\n`;
const CAST = `headnote 1\ninclude "shop.headnote"\nsession 2026-03-02\n  bench b\nrun cast\n  stage "as cast"\n${rows(50)}`;
const CUT = `headnote 1\ninclude "shop.headnote"\ninclude "cast.headnote"\nsession 2026-03-09\n  bench b\nrun bowl\n  stage "bowl"\n  baseline cast\n${rows(52)}run again\n  stage "bowl"\n  baseline bowl\n${rows(53)}`;
const files = { "shop.headnote": SHOP, "cast.headnote": CAST, "cut.headnote": CUT };

/** The runs that the talk names, the leading one first. */
async function checkDrawn(args: readonly string[], runs: string): Promise<void> {
  await inShop(files, async (shop) => {
    const { code, err } = await shop.headnote(["chart", ...args, "-o", "x.json"]);
    expect([code, err]).toEqual([0, `wrote x.json: ${runs}\n`]);
    expect(JSON.parse(shop.read("x.json")).$schema).toContain("vega-lite");
  });
}

describe("the runs drawn are", () => {
  test("all of the record and the baselines outside it", () =>
    checkDrawn(["cut.headnote"], "bowl, again, cast"));
  test("those asked for, each against its baseline", () =>
    checkDrawn(["cut.headnote", "--run", "again"], "again, bowl"));
  test("those of a record without baselines", () => checkDrawn(["cast.headnote"], "cast"));
});

test("cylinders of one stage are equals, named by their numbers, and draw no baselines", async () => {
  const cylinder = (number: number) =>
    `run c${number}\n  cylinder ${number}\n  stage "bowl"\n  baseline cast\n${rows(50 + number / 10)}`;
  const all = `headnote 1\ninclude "shop.headnote"\ninclude "cast.headnote"\nsession 2026-03-09\n  bench b\n${[1, 2, 3].map(cylinder).join("")}`;
  await inShop({ ...files, "all.headnote": all }, async (shop) => {
    const { err } = await shop.headnote(["chart", "all.headnote", "-o", "x.json"]);
    expect(err).toBe("wrote x.json: c1, c2, c3\n");
    const { datasets, title } = JSON.parse(shop.read("x.json"));
    const labels = datasets.labels.map(({ text }: { readonly text: string }) => text);
    expect(labels.sort()).toEqual(["cylinder 1", "cylinder 2", "cylinder 3"]);
    expect(title.text).toEqual(["Cylinders 1 to 3"]);
    const one = await shop.headnote(["chart", "all.headnote", "-o", "x.json", "--run", "c2"]);
    expect(one.err).toBe("wrote x.json: c2, cast\n");
  });
});

test("an option is not taken for the value of the one before it", async () => {
  await inShop(files, async (shop) => {
    for (const args of [
      ["-o", "--run", "cast"],
      ["--run", "-o", "x.svg"],
    ]) {
      const { code, err } = await shop.headnote(["chart", "cast.headnote", ...args]);
      expect([code, err]).toEqual([2, expect.stringContaining("A value belongs there.")]);
    }
    expect(existsSync(join(shop.folder, "--run"))).toBe(false);
  });
});

test("a run whose name cannot be read is called that", async () => {
  await inShop({ ...files, "a.headnote": CAST.replace("run cast", "run ?cast") }, async (shop) => {
    const { err } = await shop.headnote(["chart", "a.headnote", "-o", "x.json"]);
    expect(err).toBe("wrote x.json: run without a name\n");
    expect(JSON.parse(shop.read("x.json")).title.text).toEqual(["run without a name"]);
    const { out } = await shop.headnote(["table", "a.headnote"]);
    expect(out).toMatch(/^run without a name\n/);
  });
});

describe("the picture is", () => {
  test("SVG, or PNG, by the name's ending", async () => {
    await inShop(files, async (shop) => {
      for (const name of ["x.svg", "x.PNG"]) {
        const { code } = await shop.headnote(["chart", "cast.headnote", "-o", name, "--theme", "dark"]);
        expect(code).toBe(0);
      }
      expect(shop.read("x.svg")).toMatch(/^<svg role="img"/);
      // PNG specification (third edition), 5.2: the signature.
      const png = readFileSync(join(shop.folder, "x.PNG")).subarray(0, 8);
      expect([...png]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    });
  });

  test("in the units asked for", async () => {
    await inShop(files, async (shop) => {
      const args = ["--unit", "mm", "--unit", "l/s"];
      const { code } = await shop.headnote(["chart", "cast.headnote", "-o", "x.json", ...args]);
      expect(code).toBe(0);
      const { vconcat } = JSON.parse(shop.read("x.json"));
      expect(vconcat[0].encoding.y.axis.title).toMatch(/^Corrected flow, L\/s /);
      expect(vconcat[0].encoding.x.axis.title).toBe("Valve lift, mm");
    });
  });

  test("a part of the lift axis where that is asked for", async () => {
    await inShop(files, async (shop) => {
      const domain = async (...args: readonly string[]) => {
        await shop.headnote(["chart", "cast.headnote", "-o", "x.json", ...args]);
        return JSON.parse(shop.read("x.json")).vconcat[0].encoding.x.scale.domain.map((end: number) =>
          Number(end.toFixed(6)),
        );
      };
      const [low, high] = await domain();
      expect(await domain("--from", "0.15in")).toEqual([0.15, high]);
      expect(await domain("--to", "3.81 mm")).toEqual([low, 0.15]);
      expect(await domain("--from", "0.12 in", "--to", "4.572mm")).toEqual([0.12, 0.18]);
      expect(await domain("--to", "1 m")).toEqual([low, high]);
    });
  });

  test("the velocity map where that is asked for", async () => {
    const map =
      "map of cast\n  lift 0.2 in\n  depression 28 inH2O\n  x[in] y[in] velocity[ft/s]\n  0 0 200\n  1 1 250\n";
    await inShop({ ...files, "map.headnote": `${CAST}${map}${map}` }, async (shop) => {
      const { code, err } = await shop.headnote(["chart", "map.headnote", "-o", "x.json", "--map"]);
      const told = "wrote x.json: map of cast, the first of 2 maps; --run tells whose\n";
      expect([code, err]).toEqual([0, told]);
      expect(JSON.parse(shop.read("x.json")).datasets.places).toHaveLength(2);
    });
  });

  test("the same every time", async () => {
    await inShop(files, async (shop) => {
      for (const name of ["a.svg", "b.svg"]) await shop.headnote(["chart", "cut.headnote", "-o", name]);
      expect(shop.read("a.svg")).toBe(shop.read("b.svg"));
    });
  });

  test("drawn also of a record without runs, and says so", async () => {
    await inShop(files, async (shop) => {
      const { code, err } = await shop.headnote(["chart", "shop.headnote", "-o", "x.svg"]);
      expect([code, err]).toEqual([0, "wrote x.svg, which has no run to show\n"]);
    });
  });
});

describe("nothing is written, with a sentence and exit 2,", () => {
  test.each([
    ["without a name", []],
    ["for a name of another kind", ["-o", "x.gif"]],
    ["for a width that is none", ["-o", "x.svg", "--width", "wide"]],
    ["for a unit that is none", ["-o", "x.svg", "--unit", "cats"]],
    ["for a unit that no result has", ["-o", "x.svg", "--unit", "degF"]],
    ["for a lift without its unit", ["-o", "x.svg", "--from", "0.2"]],
    ["for a lift that is a pressure", ["-o", "x.svg", "--to", "2 kPa"]],
    ["for lifts the wrong way round", ["-o", "x.svg", "--from", "0.3in", "--to", "2mm"]],
    ["for a map that is not there", ["-o", "x.svg", "--map"]],
    ["for a run that is not there", ["-o", "x.svg", "--run", "cats"]],
    ["in a folder that is not there", ["-o", "no/x.svg"]],
  ])("%s", async (_, args) => {
    await inShop(files, async (shop) => {
      const { code, err } = await shop.headnote(["chart", "cast.headnote", ...args]);
      expect(code).toBe(2);
      expect(err).toMatch(/^headnote: .+\n$/);
      expect(readdirSync(shop.folder).sort()).toEqual(Object.keys(files).sort());
    });
  });

  test("on a disk that is full, and a picture that was there stays", async () => {
    await inShop({ ...files, "x.json": "old" }, async (shop) => {
      const full = () => {
        throw Object.assign(new Error("full"), { code: "ENOSPC" });
      };
      const ran = await shop.headnote(["chart", "cast.headnote", "-o", "x.json"], { writeBytes: full });
      expect([ran.code, shop.read("x.json")]).toEqual([2, "old"]);
      expect(readdirSync(shop.folder)).toHaveLength(4);
    });
  });

  // The superuser may write anywhere, so that there is nothing to see then.
  test.skipIf(process.getuid?.() === 0)("in a folder that may not be written", async () => {
    await inShop(files, async (shop) => {
      chmodSync(shop.folder, 0o555);
      const { code, err } = await shop.headnote(["chart", "cast.headnote", "-o", "x.json"]);
      chmodSync(shop.folder, 0o755);
      expect([code, err]).toEqual([2, "headnote: x.json: it may not be written\n"]);
      expect(existsSync(join(shop.folder, "x.json"))).toBe(false);
    });
  });
});

describe("a trace or a ladder instead of runs", () => {
  const trace = tracedRun(0.05).slice(tracedRun(0.05).indexOf("trace 0.500"));
  const record = tracedRun(0.05);
  const twice = `${record}${trace}`;
  const draw = (text: string, args: readonly string[], check: (ran: Ran) => void) =>
    inShop({ "a.headnote": text }, async (shop) => {
      check(await shop.headnote(["chart", "a.headnote", "-o", "x.svg", ...args]));
    });

  test.each(["0.500", "0.5", "0.500 in"])("is picked by its lift, written %s", (lift) =>
    draw(record, ["--trace", lift], ({ code, err }) => {
      expect([code, err]).toEqual([0, "wrote x.svg: trace 0.500 in of r1\n"]);
    }),
  );

  test("is the only one where no lift is said; what follows is no lift", async () => {
    await inShop({ "a.headnote": record }, async (shop) => {
      const { code, err } = await shop.headnote(["chart", "a.headnote", "--trace", "-o", "x.svg"]);
      expect([code, err]).toEqual([0, "wrote x.svg: trace 0.500 in of r1\n"]);
    });
    await draw(record, ["--ladder"], ({ code, err }) => {
      expect([code, err]).toEqual([2, "headnote: a.headnote: it has no ladder\n"]);
    });
    await draw(twice, ["--trace"], ({ code, err }) => {
      expect(code).toBe(2);
      expect(err).toContain("say which with its lift, or with --run");
    });
  });

  test("that is not there is named beside those that are", async () => {
    await draw(record, ["--trace", "0.4"], ({ code, err }) => {
      expect([code, err]).toEqual([
        2,
        "headnote: a.headnote: there is no trace of 0.4 in it; it has trace 0.500 in of r1\n",
      ]);
    });
    await draw(record, ["--ladder", "0.5"], ({ code, err }) => {
      expect([code, err]).toEqual([
        2,
        "headnote: a.headnote: there is no ladder of 0.5 in it; it has no ladder\n",
      ]);
    });
  });

  test("of which there are two at that lift asks which", () =>
    draw(twice, ["--trace", "0.5"], ({ code, err }) => {
      expect(code).toBe(2);
      expect(err).toContain("say which with --run");
    }));
});
