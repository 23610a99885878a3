// The preview's page in a real browser under its real policy: what it draws, says and lets a hand do, in four themes.
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { KINDS } from "../../server/catalogue.ts";
import type { ToPage } from "../../shared/messages/preview.ts";
import { shopRecord } from "../kit/service.ts";
import { type Opening, type OpenPage, type Pages, PLAIN, startPages } from "./page.ts";
import { THEME_NAMES } from "./themes.ts";

const ROOT = join(import.meta.dirname, "../..");
const SHOTS = join(ROOT, "dist/preview-shots");
const FIRST = join(ROOT, "samples/first.headnote");
const EIGHT = join(ROOT, "samples/ironside-eight/2026-04-25-all-intakes.headnote");

// A browser on a busy machine takes its time.
vi.setConfig({ testTimeout: 60_000 });

let pages: Pages;
beforeAll(async () => {
  mkdirSync(SHOTS, { recursive: true });
  pages = await startPages();
}, 60_000);
afterAll(() => pages.stop());

const ROWS = "  0.100  28.0  55.0\n  0.200  28.0  111.0\n  0.300  28.0  157.0\n";
const URI = PLAIN.uri;

/** Opens a record, waits for its picture or for the reason why there is none, and closes it behind the test. */
async function inPage(
  record: string | { readonly path: string },
  opening: Opening,
  look: (opened: OpenPage) => Promise<void>,
): Promise<void> {
  const opened = await pages.open(typeof record === "string" ? { text: record } : record, opening);
  try {
    await opened.page.locator("#picture svg, #problem:not([hidden])").first().waitFor();
    await look(opened);
    expect(opened.complaints).toEqual([]);
    expect(opened.said.filter(({ type }) => type === "failed")).toEqual([]);
  } finally {
    await opened.close();
  }
}

/** Points of the main panel, by what they say to screen readers. */
const points = ({ page }: OpenPage) => page.locator('#picture path[role="graphics-symbol"]');

describe.each(THEME_NAMES)("in the theme %s", (theme) => {
  test("nothing is in the way of anybody, by the rules of WCAG 2.2 AA", async () => {
    await inPage({ path: FIRST }, { theme, line: 45, width: 1000 }, async ({ page, tell }) => {
      const scan = async () => {
        const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
        const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
        return violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => target).slice(0, 3)]);
      };
      expect(await scan()).toEqual([]);
      await page.setViewportSize({ width: 360, height: 800 });
      await page.getByRole("button", { name: "Axes" }).click();
      await page.getByRole("button", { name: "All columns" }).click();
      await page.getByRole("button", { name: "Closer" }).click();
      await page.getByRole("button", { name: "Whole curve" }).waitFor();
      expect(await scan()).toEqual([]);
      await tell({ type: "unreadable", text: "first.headnote: it is not there" });
      await page.locator("#problem").waitFor();
      expect(await scan()).toEqual([]);
    });
  });

  test.each([360, 800, 1400])("it fits into %i pixels, and a picture of it is kept", async (width) => {
    await inPage({ path: FIRST }, { theme, width, line: 45 }, async ({ page, tell }) => {
      await tell({ type: "cursor", uri: URI, line: 45 });
      await page.screenshot({ path: join(SHOTS, `first-${theme}-${width}.png`), fullPage: true });
      const box = await page.locator("#picture svg").boundingBox();
      expect(box?.x).toBeGreaterThanOrEqual(0);
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
      const sideways = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
      expect(sideways).toBeLessThanOrEqual(0);
    });
    await inPage({ path: EIGHT }, { theme, width, state: { choice: { kind: "all" } } }, async ({ page }) => {
      await page.screenshot({ path: join(SHOTS, `eight-${theme}-${width}.png`) });
    });
  });
});

describe("the picture", () => {
  test("takes a new reading where it stands", async () => {
    await inPage(shopRecord(ROWS), {}, async (opened) => {
      const { page, show } = opened;
      expect(await points(opened).count()).toBe(3);
      await page.evaluate("document.querySelector('#picture svg').marked = true");
      await show(shopRecord(ROWS.replace("157.0", "155.0")));
      await page.locator('#picture path[aria-label*="154.2"]').waitFor();
      expect(await page.evaluate("document.querySelector('#picture svg').marked")).toBe(true);
      await show(shopRecord(`${ROWS}  0.400  28.0  400.0\n`));
      await expect.poll(() => points(opened).count()).toBe(4);
      expect(await page.locator("#results tbody tr").count()).toBe(4);
    });
  });

  test("is looked at more closely by buttons and keys, around the cursor's reading, and seen whole again", async () => {
    await inPage({ path: FIRST }, {}, async ({ page, tell, view }) => {
      await tell({ type: "cursor", uri: URI, line: 45 });
      const shares = () => {
        const { shown, whole } = view().lifts ?? { shown: [0, 0], whole: [0, 1] };
        return shown.map((lift) => Number((lift / whole[1]).toFixed(3)));
      };
      expect(await page.getByRole("button", { name: "Wider" }).isVisible()).toBe(false);
      const closer = page.getByRole("button", { name: "Closer" });
      const before = await closer.boundingBox();
      await closer.click();
      // 0.4 of 0.6 in, a quarter to either side.
      await expect.poll(shares).toEqual([0.417, 0.917]);
      await page.locator("#picture", { hasText: "need not begin at zero" }).waitFor();
      // A second press finds it where the first one did, in a bar of two lines.
      expect(await closer.boundingBox()).toEqual(before);
      expect((await page.locator("#bar").boundingBox())?.height).toBeLessThan(60);
      await page.getByRole("button", { name: "Whole curve" }).focus();
      for (const [key, wanted] of [
        ["ArrowRight", [0.5, 1]],
        ["+", [0.542, 0.792]],
        ["ArrowLeft", [0.479, 0.729]],
        ["-", [0.354, 0.854]],
        ["0", [0, 1]],
        ["-", [0, 1]],
        ["ArrowLeft", [0, 1]],
      ] as const) {
        await page.keyboard.press(key);
        await expect.poll(shares).toEqual(wanted);
      }
      await page.locator("#zoom-all").waitFor({ state: "hidden" });
      expect(await page.evaluate("kept")).toMatchObject({ lifts: null });
      // Nowhere else do keys do this.
      await page.locator("#pin").press("+");
      expect(shares()).toEqual([0, 1]);
    });
  });

  test("is looked at more closely where it is drawn across; a click is still a click", async () => {
    await inPage({ path: FIRST }, {}, async (opened) => {
      const { page, said, view } = opened;
      const box = (await page.locator(".concat_0_group .background").first().boundingBox()) ?? {
        x: 0,
        y: 0,
        width: 0,
        height: 0,
      };
      const at = (share: number) => [box.x + share * box.width, box.y + box.height / 2] as const;
      await page.mouse.move(...at(0.5));
      await page.mouse.down();
      await page.mouse.move(...at(0.75), { steps: 3 });
      await page.mouse.move(...at(1.5), { steps: 3 });
      expect(await page.locator(".brush").isVisible()).toBe(true);
      await page.screenshot({ path: join(SHOTS, "drawn-across-light-900.png") });
      await page.mouse.up();
      await expect
        .poll(() => view().lifts?.shown.map((lift) => Number((lift / 0.0254).toFixed(2))))
        .toEqual([0.3, 0.6]);
      expect(await page.locator(".brush").isVisible()).toBe(false);
      expect(said.filter(({ type }) => type === "reveal")).toEqual([]);
      await page.screenshot({ path: join(SHOTS, "zoomed-light-900.png"), fullPage: true });
      const told = opened.heard("reveal");
      await points(opened).last().click();
      expect(await told).toMatchObject({ focus: false });
      await page.locator("#reset").click();
      await page.locator("#zoom-all").waitFor({ state: "hidden" });
    });
  });

  test("of a trace has no lift axis to look at more closely", async () => {
    const trace = { path: join(ROOT, "samples/ironside-eight/2026-03-09-eased-up.headnote") };
    await inPage(trace, { line: 28 }, async ({ page, said }) => {
      await page.locator("#picture", { hasText: "Time since opening" }).waitFor();
      expect(await page.locator("#zoom").isVisible()).toBe(false);
      const box = await page.locator("#drawing").boundingBox();
      await page.mouse.move((box?.x ?? 0) + 200, (box?.y ?? 0) + 150);
      await page.mouse.down();
      await page.mouse.move((box?.x ?? 0) + 400, (box?.y ?? 0) + 150, { steps: 4 });
      expect(await page.locator(".brush").isVisible()).toBe(false);
      await page.mouse.up();
      await page.locator("#picture").press("+");
      expect(said.map(({ type }) => type)).toEqual(["ready"]);
    });
  });

  test("rings the reading under the cursor, and marks its row, without scrolling", async () => {
    await inPage({ path: FIRST }, { height: 300 }, async ({ page, tell }) => {
      const rings = page.locator("#picture g.role-mark path[stroke-width='2'][d*='A']");
      await tell({ type: "cursor", uri: URI, line: 45 });
      await page.locator('tr[aria-current="true"]', { hasText: "180.2" }).waitFor();
      // On the curve, in the strip of the coefficient and in that of settle times.
      await expect.poll(() => rings.count()).toBe(3);
      await tell({ type: "cursor", uri: "file:///another", line: 43 });
      await tell({ type: "cursor", uri: URI, line: 2 });
      await expect.poll(() => rings.count()).toBe(0);
      expect(await page.locator("tr[aria-current]").count()).toBe(0);
      expect(await page.evaluate("scrollY")).toBe(0);
    });
  });

  test("leads from a point to its line, and twice clicked to the keyboard too", async () => {
    await inPage(shopRecord(ROWS), {}, async (opened) => {
      const told = opened.heard("reveal");
      await points(opened).nth(1).click();
      const { run, line, focus } = await told;
      expect([run, focus]).toEqual(["i1", false]);
      expect(shopRecord(ROWS).split("\n")[line + (opened.view().runs[0]?.line ?? 0)]).toContain("0.200");
      await points(opened).nth(1).dblclick();
      expect(opened.said.at(-1)).toMatchObject({ type: "reveal", focus: true });
    });
  });

  test("leads from the strips to a line too, and rings there whichever reading of a mean the cursor is in", async () => {
    const text = `${shopRecord(`${ROWS}  0.300  28.0  158.0\n`)}\nrun i2\n  baseline i1\n  lift[in]  depression[inH2O]  flow[cfm]\n${ROWS}  0.300  28.0  159.0\n`;
    const first = text.split("\n").indexOf("run i2");
    await inPage(text, { line: first }, async (opened) => {
      const { page, tell, heard } = opened;
      const rings = page.locator("#picture g.role-mark path[stroke-width='2'][d*='A']");
      for (const row of [5, 6]) {
        await tell({ type: "cursor", uri: URI, line: first + row });
        await page.locator('tr[aria-current="true"]').waitFor();
        // The curve's, the gain's and the coefficient's.
        await expect.poll(() => rings.count()).toBe(3);
      }
      const strip = page.locator("#picture .concat_1_group .mark-symbol path").first();
      const told = heard("reveal");
      await strip.click({ force: true });
      expect(await told).toMatchObject({ run: "i2", line: 3 });
    });
  });

  test("stays, faint, with the reason and its line while the text is broken", async () => {
    const text = shopRecord(ROWS);
    await inPage(text, {}, async (opened) => {
      const { page, show, heard } = opened;
      await show(text.replace("flow[cfm]", "flow[cfmm]"));
      const problem = page.locator("#problem");
      await problem.waitFor();
      expect(await problem.textContent()).toMatch(/^Last good drawing\. Line 24: .*cfmm/);
      expect(await points(opened).count()).toBe(3);
      expect(await page.locator("#page.is-stale").count()).toBe(1);
      const told = heard("reveal");
      await problem.getByRole("button").click();
      expect(await told).toMatchObject({ run: null, line: 23 });
      await page.screenshot({ path: join(SHOTS, "broken-light-900.png"), fullPage: true });
      await show(text);
      await problem.waitFor({ state: "hidden" });
      expect(await page.locator("#page.is-stale").count()).toBe(0);
    });
  });

  test("does not go back to an older version of the text", async () => {
    await inPage(shopRecord(ROWS), {}, async (opened) => {
      const old = { ...opened.view(), version: 0, name: "older" };
      await opened.tell({ type: "show", state: PLAIN, view: old });
      expect(await opened.page.locator("#name").textContent()).not.toBe("older");
      // Another record counts its versions by itself.
      await opened.tell({ type: "show", state: { ...PLAIN, uri: "file:///b" }, view: old });
      await expect.poll(() => opened.page.locator("#name").textContent()).toBe("older");
    });
  });

  test("takes the editor's colours as they change", async () => {
    await inPage(shopRecord(ROWS), { theme: "light" }, async ({ page, heard }) => {
      const told = heard("look");
      await page.evaluate(`
        document.documentElement.style.setProperty("--vscode-editor-background", "#1f1f1f");
        document.documentElement.style.setProperty("--vscode-editor-foreground", "#cccccc");
        document.body.className = "vscode-dark";
      `);
      expect((await told).look.colours).toMatchObject({ kind: "dark", background: "rgb(31, 31, 31)" });
      const paper = () =>
        page.evaluate("getComputedStyle(document.querySelector('#picture svg')).backgroundColor");
      await expect.poll(paper).toBe("rgb(31, 31, 31)");
    });
  });

  test("bows to forced colours", async () => {
    await inPage(
      shopRecord(ROWS),
      { browser: { forcedColors: "active", colorScheme: "dark" } },
      async ({ said }) => {
        const [ready] = said;
        expect(ready).toMatchObject({ type: "ready", look: { colours: { kind: "high-contrast-dark" } } });
      },
    );
  });
});

describe("beside the picture", () => {
  test("a screen reader meets summary, findings, table and picture, in this order", async () => {
    await inPage({ path: FIRST }, { width: 1400 }, async ({ page }) => {
      const order = await page
        .locator("#summary, #findings, #results, #picture")
        .evaluateAll((parts) => parts.map(({ id }) => id));
      expect(order).toEqual(["summary", "findings", "results", "picture"]);
      expect(await page.locator("#summary").textContent()).toContain("peak 180.2 cfm at 0.400 in");
      await expect.poll(() => page.getByRole("status").textContent()).toContain("peak 180.2 cfm");
      const heads = await page.locator("thead th").allTextContents();
      expect(heads).toEqual(expect.arrayContaining(["corrected flowcfm", "liftin"]));
    });
  });

  test("the whole page is walked through by Tab, and left again; Enter on a row goes to its line", async () => {
    await inPage(shopRecord(ROWS), {}, async ({ page, said }) => {
      const met: string[] = [];
      for (let press = 0; press < 60; press++) {
        await page.keyboard.press("Tab");
        const name = await page.evaluate<string>(
          "document.activeElement === document.body ? '' : document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent",
        );
        if (name === "" && met.length > 0) break;
        met.push(name);
        if (name.startsWith("line ") && name.includes("0.200")) await page.keyboard.press("Enter");
      }
      expect(met.length).toBeLessThan(60);
      expect(met).toEqual(expect.arrayContaining(["Pin", "SVG", "Copy as Markdown table"]));
      expect(met.filter((name) => name.startsWith("line ")).length).toBe(3);
      expect(said.at(-1)).toMatchObject({ type: "reveal", run: null, focus: true });
    });
  });

  test("runs, axis and coefficient are chosen, and reset", async () => {
    await inPage({ path: EIGHT }, {}, async ({ page, said, view }) => {
      await page.locator("#picker").selectOption({ label: "all 8 runs" });
      await expect.poll(() => view().runs.length).toBe(8);
      await page.locator("#axis").selectOption("lift-ratio");
      await page.locator("#cd").selectOption("gap");
      await page.locator("#picture", { hasText: "Lift over valve diameter" }).waitFor();
      await page.locator("#picture", { hasText: "Cd on the gap area" }).waitFor();
      expect(await page.evaluate("kept")).toMatchObject({
        axis: "lift-ratio",
        cd: "gap",
        choice: { kind: "all" },
      });
      await page.locator("#reset").click();
      await page.locator("#picture", { hasText: "Valve lift" }).waitFor();
      await expect.poll(() => view().runs.length).toBe(1);
      await page.locator("#pin").click();
      await page.locator('#pin[aria-pressed="true"]').waitFor();
      expect(said.filter(({ type }) => type === "pin")).toEqual([{ type: "pin", isPinned: true }]);
    });
  });

  test("units are chosen, for picture, table and words, and are the record's own again", async () => {
    await inPage({ path: FIRST }, {}, async ({ page, said }) => {
      await page.getByRole("combobox", { name: "Unit of lift" }).selectOption("mm");
      await page.locator("#picture", { hasText: "Valve lift, mm" }).waitFor();
      await page.getByRole("combobox", { name: "Unit of flow" }).selectOption("L/s");
      await page.locator("#summary", { hasText: /L\/s at 10\.16 mm/ }).waitFor();
      expect(await page.locator("thead th").allTextContents()).toEqual(
        expect.arrayContaining(["liftmm", "corrected flowL/s", "depressioninH2O"]),
      );
      await page.locator("#findings", { hasText: "the record's own units" }).waitFor();
      await page.getByRole("combobox", { name: "Unit of lift" }).selectOption("in");
      await page.locator("#summary", { hasText: /L\/s at 0\.400 in/ }).waitFor();
      expect(said.at(-1)).toMatchObject({ type: "axes", axes: { units: ["L/s"] } });
      await page.locator("#reset").click();
      await page.locator("#summary", { hasText: /cfm at 0\.400 in/ }).waitFor();
      expect(await page.locator("#findings", { hasText: "the record's own units" }).count()).toBe(0);
      // Quicker than any answer.
      await page.evaluate(`for (const [id, unit] of [["lift", "mm"], ["flow", "L/s"], ["depression", "kPa"]]) {
        const list = document.getElementById("unit-" + id);
        list.value = unit;
        list.dispatchEvent(new Event("change"));
      }`);
      expect(said.at(-1)).toMatchObject({ type: "axes", axes: { units: ["mm", "L/s", "kPa"] } });
      await page.locator("#summary", { hasText: /L\/s at 10\.16 mm/ }).waitFor();
    });
  });

  test("a narrow page has one line of choices, and a table that fits; nothing is out of reach", async () => {
    const first = readFileSync(FIRST, "utf8");
    await inPage(shopRecord(ROWS), { width: 360 }, async ({ page }) => {
      expect((await page.locator("#bar").boundingBox())?.height).toBeLessThan(30);
    });
    await inPage(first, { width: 360, line: 45 }, async ({ page, show }) => {
      expect((await page.locator("#bar").boundingBox())?.height).toBeLessThan(60);
      const table = page.locator("#results .scrolled").first();
      const overhang = () => table.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
      expect(await overhang()).toBeLessThanOrEqual(0);
      const heads = () => table.locator("thead th:visible").allTextContents();
      expect(await heads()).toEqual(["line", "liftin", "corrected flowcfm", "±Ucfm", "remarks"]);
      await page.getByRole("button", { name: "All columns" }).click();
      await table.evaluate((element) => element.scrollTo({ left: 40 }));
      await show(first.replace("181.5", "182.5"));
      await page.locator("#summary", { hasText: "peak 181.2" }).waitFor();
      expect(await table.evaluate(({ scrollLeft }) => scrollLeft)).toBe(40);
      expect(await heads()).toEqual(expect.arrayContaining(["Cd curtain", "settles"]));
      expect(await page.locator("#axis").isVisible()).toBe(false);
      await page.getByRole("button", { name: "Axes" }).press("Enter");
      for (const id of ["axis", "cd", "unit-lift", "unit-flow", "unit-depression", "reset"])
        expect([id, await page.locator(`#${id}`).isVisible()]).toEqual([id, true]);
      await page.screenshot({ path: join(SHOTS, "first-light-360-open.png") });
    });
  });

  test.each([300, 360, 445, 640])("no button of a page of %d px breaks its words", async (width) => {
    await inPage(shopRecord(ROWS), { width }, async ({ page }) => {
      await page.getByRole("button", { name: "Closer" }).click();
      await page.getByRole("button", { name: "Whole curve" }).waitFor();
      const axes = page.getByRole("button", { name: "Axes" });
      if (await axes.isVisible()) await axes.click();
      for (const button of await page.locator("#bar button:visible").all()) {
        const said = await button.textContent();
        expect([said, ((await button.boundingBox())?.height ?? 0) < 32]).toEqual([said, true]);
      }
      expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBeLessThanOrEqual(0);
      await page.screenshot({ path: join(SHOTS, `closer-${width}.png`) });
    });
  });

  test("saving and copying are asked of the editor; pictures are drawn on the page", async () => {
    await inPage(shopRecord(ROWS), {}, async ({ page, said, tell, heard, view }) => {
      for (const name of ["SVG", "PNG", "CSV", "Vega-Lite"])
        await page.getByRole("button", { name, exact: true }).click();
      await page.locator("#copy").click();
      expect(said.slice(-5).map((message) => ("format" in message ? message.format : message.type))).toEqual([
        "svg",
        "png",
        "csv",
        "vega-lite",
        "copy",
      ]);
      const drawn = async (format: "svg" | "png") => {
        const told = heard("drawn");
        await tell({ type: "draw", ticket: 1, format, spec: view().spec ?? {} });
        return (await told).data;
      };
      const svg = await drawn("svg");
      expect(svg).toMatch(/^<svg role="img"[^>]*><title>i1<\/title><desc>/);
      expect(svg).not.toContain("var(");
      // PNG specification (third edition), 5.2: the signature.
      expect([...Buffer.from(await drawn("png"), "base64").subarray(0, 8)]).toEqual([
        137, 80, 78, 71, 13, 10, 26, 10,
      ]);
    });
  });

  test("what is only pressed stays away from paper, which is white in every theme", async () => {
    for (const theme of THEME_NAMES) {
      await inPage({ path: FIRST }, { theme }, async ({ page }) => {
        await page.locator("#zoom-in").waitFor();
        const isDark = await page.locator(".frame.is-dark").count();
        expect([theme, isDark]).toEqual([theme, theme.includes("dark") ? 1 : 0]);
        await page.emulateMedia({ media: "print" });
        expect(await page.locator("select:visible, button:visible:not(.line)").count()).toBe(0);
        expect(await page.locator("#name, #picture svg").evaluateAll((all) => all.length)).toBe(2);
        // The picture itself may be drawn anew by now, on white.
        const colours = await page.evaluate<string[]>(`(() => {
          document.querySelector("#drawing").insertAdjacentElement("beforeend", document.createElement("i")).className = "is-dark";
          return [["body", "backgroundColor"], ["#summary p", "color"], ["dt", "color"], [".line", "color"], ["i.is-dark", "filter"]]
            .map(([at, what]) => getComputedStyle(document.querySelector(at))[what]);
        })()`);
        expect(colours).toEqual([
          "rgb(255, 255, 255)",
          "rgb(0, 0, 0)",
          "rgb(85, 85, 85)",
          "rgb(0, 0, 0)",
          expect.stringContaining("invert(1)"),
        ]);
        expect((await page.pdf()).subarray(0, 5).toString()).toBe("%PDF-");
      });
    }
  });
});

describe("bad input does no harm:", () => {
  const HOSTILE = [
    '<img src=x onerror="globalThis.pwned=1"><script>globalThis.pwned=1</script>',
    "\u001b[31m\u001b]0;x\u0007",
    "\u202Eevil \u2066txt",
    "'; alert(1); //$" + "{globalThis.pwned=1}",
    "x".repeat(10_000),
  ];
  test.each(HOSTILE.map((text) => [text.slice(0, 30), text] as const))(
    "titles and remarks %j",
    async (_, text) => {
      const quoted = `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`;
      const record = shopRecord(`  0.100  28.0  55.0  ${quoted}\n  0.200  28.0  109.0\n`)
        .replace("run i1", `run i1 ${quoted}`)
        .replace("  lift[in]", `  stage ${quoted}\n  lift[in]`);
      await inPage(record, { width: 500 }, async (opened) => {
        const { page } = opened;
        expect(await points(opened).count()).toBe(2);
        expect(await page.evaluate("globalThis.pwned")).toBeUndefined();
        expect(await page.locator("img, #page script, #picture a").count()).toBe(0);
        const words = await page.evaluate<string>("document.querySelector('#page').innerText");
        expect(words).not.toMatch(/[^\P{Cc}\n\t]|\p{Bidi_C}/u);
        expect(words.length).toBeLessThan(4000);
        expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBeLessThanOrEqual(
          0,
        );
        await page.screenshot({ path: join(SHOTS, `bad-text-${HOSTILE.indexOf(text)}.png`) });
      });
    },
  );

  const lots = Array.from(
    { length: 5000 },
    (_, index) => `  ${(0.0001 * (index + 1)).toFixed(4)}  28.0  ${(55 + index / 50).toFixed(1)}`,
  ).join("\n");
  test.each<[string, string, number]>([
    ["one point", "  0.100  28.0  55.0\n", 1],
    ["all void", '  0.100  28.0  55.0  void\n  0.200  28.0  90.0  void "slipped"\n', 2],
    [
      "values out by a million",
      "  0.100  28.0  55.0\n  0.200  28.0  111000000\n  0.300  28.0  0.000157\n",
      3,
    ],
    ["5 000 points", lots, 5000],
  ])("%s", async (name, rows, count) => {
    await inPage(shopRecord(rows), {}, async (opened) => {
      expect(opened.view().tables[0]?.rows.length).toBe(Math.min(400, count));
      await opened.page.locator("#picture svg").waitFor();
      await opened.page.screenshot({ path: join(SHOTS, `bad-${name.replaceAll(" ", "-")}.png`) });
    });
  });

  test.each([
    ["no run", "headnote 1\n", "There is no run in this file yet."],
    ["no point", shopRecord(""), "No reading yet"],
    [
      "everything wrong at once",
      shopRecord(ROWS).replaceAll("28.0", "28,0 x").replace("run i1", "run i1 @@"),
      "",
    ],
  ])("%s", async (name, record, words) => {
    await inPage(record, {}, async ({ page }) => {
      expect(await page.locator("#problem").textContent()).toContain(words);
      await page.screenshot({ path: join(SHOTS, `bad-${name.replaceAll(" ", "-")}.png`) });
    });
  });

  test("every kind of finding, one record after another", async () => {
    const all = { state: { choice: { kind: "all" } } } as const;
    await inPage(shopRecord(ROWS), all, async (opened) => {
      const { page, show, view } = opened;
      const missed: string[] = [];
      for (const { code, bad } of KINDS) {
        await show(bad);
        const listed = view().findings.some((finding) => finding.code === code);
        if (!listed || !(await page.locator("#findings").textContent())?.includes(code)) missed.push(code);
      }
      expect(missed).toEqual([]);
      await show(shopRecord(ROWS));
      await page.locator("#problem").waitFor({ state: "hidden" });
      expect(await points(opened).count()).toBe(3);
    });
  });

  test("more findings than a page has room for", async () => {
    const rows = Array.from(
      { length: 150 },
      (_, at) => `  0.${100 + at}  27,${at % 10}  5O.0  void "x\n`,
    ).join("");
    await inPage(shopRecord(rows + ROWS), {}, async ({ page }) => {
      expect(await page.locator("#findings li").count()).toBe(100);
      expect(await page.locator("#findings").textContent()).toMatch(/and \d+ more: see the problems panel$/);
      await page.screenshot({ path: join(SHOTS, "bad-many-findings.png") });
    });
  });

  test("messages without end, in disorder, and that are none", async () => {
    await inPage(shopRecord(ROWS), {}, async (opened) => {
      const { page, tell } = opened;
      const nonsense = [{ type: "show" }, { type: "boo" }, null, 7, { type: "cursor", uri: 1, line: "x" }];
      for (const message of nonsense) await tell(message as unknown as ToPage);
      const view = opened.view();
      for (let round = 0; round < 200; round++) {
        await tell({ type: "cursor", uri: URI, line: round % 30 });
        await tell({ type: "show", state: PLAIN, view: { ...view, version: 10 + round } });
      }
      expect(await points(opened).count()).toBe(3);
      expect(await page.locator("#picture svg").count()).toBe(1);
    });
  });

  test("a picture that is none is said to be that, and the next one is drawn", async () => {
    const opened = await pages.open({ text: shopRecord(ROWS) });
    await opened.page.locator("#picture svg").waitFor();
    const told = opened.heard("failed");
    await opened.tell({
      type: "show",
      state: PLAIN,
      view: { ...opened.view(), version: 90, spec: { mark: { type: "no" } } },
    });
    await told;
    expect(await opened.page.locator("#problem").textContent()).toContain("cannot be drawn");
    await opened.tell({ type: "show", state: PLAIN, view: { ...opened.view(), version: 91 } });
    await opened.page.locator("#problem").waitFor({ state: "hidden" });
    await opened.close();
  });
});
