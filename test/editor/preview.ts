// The curve beside the text: opened, typed for, clicked on, broken and mended.
import assert from "node:assert/strict";
import type { Hands, Step } from "./hands.ts";
import type { Workbench } from "./workbench.ts";

export async function besideText(step: Step, hands: Hands, { page }: Workbench): Promise<void> {
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
    await inside.locator("#axis").selectOption("lift-ratio");
    await inside.locator("#picture", { hasText: "Lift over valve diameter" }).waitFor();
    await count(3);
  });
}
