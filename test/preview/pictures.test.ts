// Traces, ladders and maps on the preview's page: in four themes, by hand and by keys, and while their text is broken.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { tracedRun } from "../../server/rules/examples.ts";
import { type Opening, type OpenPage, type Pages, PLAIN, startPages } from "./page.ts";
import { THEME_NAMES } from "./themes.ts";

const ROOT = join(import.meta.dirname, "../..");
const SHOTS = join(ROOT, "dist/preview-shots");
const IRON = join(ROOT, "samples/ironside-eight");

/** A picture of each kind from the samples: record, and what it is called there. */
const PICTURES = [
  ["trace", `${IRON}/2026-03-07-as-cast.headnote`, "trace 0.500 in of in3-as-cast"],
  ["ladder", `${IRON}/2026-04-11-bowl-blend.headnote`, "ladder 0.500 in of in3-bowl-blend"],
  ["map", `${IRON}/2026-04-11-bowl-blend.headnote`, "map of in3-bowl-blend: at the pinch"],
] as const;

// A browser on a busy machine takes its time.
vi.setConfig({ testTimeout: 60_000 });

let pages: Pages;
beforeAll(async () => {
  mkdirSync(SHOTS, { recursive: true });
  pages = await startPages();
}, 60_000);
afterAll(() => pages.stop());

async function inPage(
  record: { readonly text: string } | { readonly path: string },
  id: string,
  opening: Opening,
  look: (opened: OpenPage) => Promise<void>,
): Promise<void> {
  const opened = await pages.open(record, { ...opening, state: { choice: { kind: "block", id } } });
  try {
    await opened.page.locator("#picture svg").waitFor();
    await look(opened);
    expect(opened.complaints).toEqual([]);
    expect(opened.said.filter(({ type }) => type === "failed")).toEqual([]);
  } finally {
    await opened.close();
  }
}

describe.each(THEME_NAMES)("in the theme %s", (theme) => {
  test.each(PICTURES)("a %s is in nobody's way, by the rules of WCAG 2.2 AA", async (_, path, id) => {
    await inPage({ path }, id, { theme, width: 1000 }, async ({ page }) => {
      const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
      const { violations } = await new AxeBuilder({ page }).withTags(tags).analyze();
      expect(violations.map(({ id: rule, nodes }) => [rule, nodes[0]?.target])).toEqual([]);
    });
  });

  test.each(PICTURES.flatMap((each) => [360, 800, 1400].map((width) => [each[0], width, each] as const)))(
    "a %s fits into %i pixels, and a picture of it is kept",
    async (kind, width, [, path, id]) => {
      await inPage({ path }, id, { theme, width }, async ({ page }) => {
        await page.screenshot({ path: join(SHOTS, `${kind}-${theme}-${width}.png`), fullPage: true });
        const box = await page.locator("#picture svg").boundingBox();
        expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
        const sideways = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
        expect(sideways).toBeLessThanOrEqual(0);
      });
    },
  );
});

describe("on the page", () => {
  const record = tracedRun(0.05);
  const id = "trace 0.500 in of r1";
  const start = record.slice(0, record.indexOf("trace 0.500")).split("\n").length - 1;
  const events = ({ page }: OpenPage) => page.locator('#picture path[role="graphics-symbol"]');

  test("what happened is told to screen readers, and leads to its line", async () => {
    await inPage({ text: record }, id, {}, async (opened) => {
      const names = await events(opened).evaluateAll((all) =>
        all.map((each) => each.getAttribute("aria-label")),
      );
      expect(names).toEqual([
        expect.stringMatching(/^settled after 1\.5 s/),
        expect.stringMatching(/^let go at 1\.3 s and 27\.5 inH2O/),
      ]);
      const told = opened.heard("reveal");
      await events(opened).nth(1).click();
      const { run, line } = await told;
      expect(run).toBe(id);
      expect(record.split("\n")[start + line]).toMatch(/^ +1\.30 /);
    });
  });

  test("the sample under the cursor is ringed in both panels, and its row is marked", async () => {
    await inPage({ text: record }, id, {}, async ({ page, tell }) => {
      const rings = page.locator("#picture g.role-mark path[stroke-width='2'][d*='A']");
      await tell({ type: "cursor", uri: PLAIN.uri, line: start + 10 });
      await expect.poll(() => rings.count()).toBe(2);
      expect(await page.locator('tr[aria-current="true"]').textContent()).toContain("0.8");
      await tell({ type: "cursor", uri: PLAIN.uri, line: 2 });
      await expect.poll(() => rings.count()).toBe(0);
    });
  });

  test("it is chosen beside the runs, and axes of curves do not stand in the way", async () => {
    const opened = await pages.open({ text: record });
    const { page } = opened;
    await page.locator("#picture svg").waitFor();
    await page.locator("#picker").selectOption({ label: id });
    await page.locator("#picture", { hasText: "Apparent area" }).waitFor();
    expect(await page.locator("#axis").isDisabled()).toBe(true);
    expect(await page.locator("#cd").isDisabled()).toBe(true);
    expect(await page.evaluate("kept")).toMatchObject({ choice: { kind: "block", id } });
    await page.locator("#picker").selectOption({ label: "r1" });
    await page.locator("#picture", { hasText: "Valve lift" }).waitFor();
    expect(await page.locator("#cd").isDisabled()).toBe(false);
    await opened.close();
  });

  test("it takes a new sample where it stands, and stays, faint, while its text is broken", async () => {
    await inPage({ text: record }, id, {}, async (opened) => {
      const { page, show } = opened;
      await page.evaluate("document.querySelector('#picture svg').marked = true");
      const sixth = page.locator("#results tbody tr").nth(5);
      const before = await sixth.textContent();
      await show(record.replace(/^( +0\.50 +\d+\.\d +)\d+\.\d$/m, "$1 170.0"));
      await expect.poll(() => sixth.textContent()).not.toBe(before);
      expect(await page.evaluate("document.querySelector('#picture svg').marked")).toBe(true);
      await show(record.replace("time[s]", "time[sss]"));
      await page.locator("#page.is-stale").waitFor();
      expect(await page.locator("#problem").textContent()).toMatch(/^Last good drawing\. Line \d+: .*sss/);
      expect(await events(opened).count()).toBe(2);
      // With another picture on the page there is none of this that could stay.
      await opened.tell({ type: "show", state: { ...PLAIN, uri: "file:///other" }, view: opened.view() });
      expect(await page.locator("#page.is-stale").count()).toBe(0);
      await show(record);
      await page.locator("#problem").waitFor({ state: "hidden" });
    });
  });

  test("numbers of a log have no lines to go to, and its events lead to the trace", async () => {
    const path = `${IRON}/2026-04-12-blended-approaches.headnote`;
    await inPage({ path }, "trace 0.500 in of in3-blended-tower", {}, async (opened) => {
      const heads = await opened.page.locator("#results thead th").allTextContents();
      expect(heads[0]).toBe("times");
      expect(await opened.page.locator("#results button.line").count()).toBe(0);
      const told = opened.heard("reveal");
      await events(opened).first().click();
      expect(await told).toMatchObject({ line: 0 });
    });
  });

  test("hostile titles are texts there too", async () => {
    const title = `<img src=x onerror='globalThis.pwned=1'><script>globalThis.pwned=1</script> ${"long ".repeat(2000)}`;
    const text = `${record}\nmap "${title}" of r1\n  x[in]  y[in]  velocity[ft/s]\n  0.1  0.2  300\n  0.5  0.9  280\n`;
    const opened = await pages.open({ text }, { width: 500, line: text.split("\n").length - 3 });
    await opened.page.locator("#picture", { hasText: "Speed at each y" }).waitFor();
    expect(await opened.page.evaluate("globalThis.pwned")).toBeUndefined();
    expect(await opened.page.locator("img, #page script, #picture a").count()).toBe(0);
    expect(
      await opened.page.evaluate("document.documentElement.scrollWidth - innerWidth"),
    ).toBeLessThanOrEqual(0);
    expect(opened.complaints).toEqual([]);
    await opened.close();
  });

  test("nothing moves where motion is unwelcome", async () => {
    await inPage({ text: record }, id, { browser: { reducedMotion: "reduce" } }, async ({ page }) => {
      const pause = "getComputedStyle(document.querySelector('#picture')).transitionDuration";
      expect(await page.evaluate(pause)).toBe("0s");
    });
  });
});
