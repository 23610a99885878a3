// The curve beside the text: opened, typed for, clicked on, broken and mended.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Hands, Step } from "./hands.ts";
import type { Workbench } from "./workbench.ts";

export async function besideText(
  step: Step,
  hands: Hands,
  { page }: Workbench,
  folder: string,
): Promise<void> {
  const { openFile, command, goTo, lineWith, picture } = hands;
  const inside = page.frameLocator("iframe.webview.ready").frameLocator("#active-frame");
  const points = inside.locator('#picture path[role="graphics-symbol"]');
  const count = async (wanted: number) => {
    for (let round = 0; round < 200 && (await points.count()) !== wanted; round++) {
      await page.waitForTimeout(100);
    }
    assert.equal(await points.count(), wanted);
  };
  const toText = () => command("View: Focus First Editor Group");

  await step("it opens without taking the keyboard", async () => {
    await openFile("monday.headnote");
    await page.locator(".squiggly-error").first().waitFor({ timeout: 60_000 });
    await goTo(18, 80);
    await page.keyboard.press("Control+k");
    await page.keyboard.press("v");
    await count(2);
    await page.keyboard.press("Enter");
    await lineWith("0.400               28.0");
    await picture("13-curve");
  });
  await step("a row that is typed is a new point", async () => {
    await page.keyboard.type("181.0");
    await count(3);
    await inside.locator("#results tr[aria-current] td", { hasText: "0.400" }).waitFor();
    await picture("14-new-point");
  });
  await step("a click on a point goes to its line, and the picture stays", async () => {
    await points.first().click();
    await inside.locator("#results tr[aria-current] td", { hasText: "0.100" }).waitFor();
    await count(3);
    await toText();
    await page.locator(".statusbar-item", { hasText: "Ln 16" }).first().waitFor();
  });
  await step("broken text leaves the last drawing, faint, with the reason; undo brings it back", async () => {
    await goTo(15, 3);
    await page.keyboard.press("Delete");
    await inside.locator("#page.is-stale #problem", { hasText: "Last good drawing" }).waitFor();
    await count(3);
    await picture("15-broken");
    await page.keyboard.press("Control+z");
    await inside.locator("#page:not(.is-stale)").waitFor();
    await count(3);
  });
  await step("lift over the valve's diameter is chosen on the page", async () => {
    await inside.getByRole("button", { name: "Axes" }).click();
    await inside.locator("#axis").selectOption("lift-ratio");
    await inside.locator("#picture", { hasText: "Lift over valve diameter" }).waitFor();
    await count(3);
  });
  await step("other units are chosen there, for picture, table and words", async () => {
    await inside.locator("#unit-lift").selectOption("mm");
    await inside.locator("#unit-flow").selectOption("L/s");
    await inside.locator("#picture", { hasText: "Corrected flow, L/s" }).waitFor();
    await inside.locator("#summary", { hasText: /L\/s at 10\.16 mm/ }).waitFor();
    await picture("16-units");
  });
  await step("the curve is drawn across, and a part of it is seen more closely", async () => {
    const plot = inside.locator(".concat_0_group .background").first();
    const box = await plot.boundingBox();
    assert.ok(box);
    const height = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width * 0.6, height);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.8, height, { steps: 4 });
    await page.mouse.move(box.x + box.width * 1.2, height, { steps: 4 });
    await page.mouse.up();
    await count(2);
    await inside.getByRole("button", { name: "Whole curve" }).waitFor();
    await picture("17-closer");
  });
  await step("a pinned curve stays while another record is worked on", async () => {
    await inside.locator("#pin").click();
    await inside.locator('#pin[aria-pressed="true"]').waitFor();
    await toText();
    await openFile("tuesday.headnote");
    await page.waitForTimeout(1000);
    assert.equal(await inside.locator("#name").textContent(), "monday.headnote");
    await openFile("monday.headnote");
  });
  const asItWas = async () => {
    await count(2);
    assert.equal(await inside.locator("#name").textContent(), "monday.headnote");
    assert.equal(await inside.locator("#axis").inputValue(), "lift-ratio");
    assert.equal(await inside.locator("#unit-flow").inputValue(), "L/s");
    assert.equal(await inside.locator("#pin").getAttribute("aria-pressed"), "true");
  };
  await step("hidden behind another editor and shown again it is as it was", async () => {
    await openFile("shop.headnote");
    await command("View: Move Editor into Next Group");
    await page.locator("iframe.webview.ready").first().waitFor({ state: "hidden" });
    await command("View: Close Editor");
    await asItWas();
  });
  await step("what it shows is saved in every form, under a name made from the run", async () => {
    for (const [button, ending, start] of [
      ["SVG", "svg", "<svg "],
      ["PNG", "png", "\x89PNG"],
      ["CSV", "csv", "file,line,run,"],
      ["Vega-Lite", "vl.json", "{"],
    ] as const) {
      await inside.getByRole("button", { name: button, exact: true }).click();
      const place = page.locator(".quick-input-widget input.input:visible").first();
      await place.waitFor();
      const name = new RegExp(`monday-i1\\.${ending}$`);
      for (let round = 0; round < 100 && !name.test(await place.inputValue()); round++) {
        await page.waitForTimeout(100);
      }
      assert.match(await place.inputValue(), name);
      await page.keyboard.press("Enter");
      const file = join(folder, `monday-i1.${ending}`);
      for (let round = 0; round < 100 && !existsSync(file); round++) await page.waitForTimeout(100);
      assert.equal(readFileSync(file, "latin1").slice(0, start.length), start);
    }
  });
  await step("its table is copied as Markdown", async () => {
    await inside.locator("#copy").click();
    let text = "";
    for (let round = 0; round < 100 && !text.startsWith("## i1"); round++) {
      await page.waitForTimeout(100);
      text = await page.evaluate("navigator.clipboard.readText()");
    }
    assert.match(text, /^## i1\n/);
    assert.match(text, /\| lift, mm \|/);
  });
  await step("after a reload of the window it is there again with its record and choices", async () => {
    await toText();
    await command("File: Save");
    await page.reload();
    await page.waitForSelector(".monaco-workbench .statusbar-item", { timeout: 90_000 });
    await inside.locator("#picture svg").waitFor({ timeout: 60_000 });
    await asItWas();
    await picture("18-reloaded");
    await inside.getByRole("button", { name: "Axes" }).click();
    await inside.locator("#reset").click();
    await count(3);
    await inside.locator("#picture", { hasText: "Valve lift, in" }).waitFor();
  });
}
