// What a person's eyes and hands do in the workbench.
import assert from "node:assert/strict";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";

/** One thing that is tried; what goes wrong with it does not keep the next from being tried. */
export type Step = (what: string, done: () => Promise<void>) => Promise<void>;

export interface Hands {
  readonly openFile: (name: string) => Promise<void>;
  /** Runs a command of the palette by its title. */
  readonly command: (title: string) => Promise<void>;
  /** Takes an entry of the list that is open. */
  readonly pick: (typed: string, shown: string) => Promise<void>;
  /** Puts the cursor at a line and column, both from 1; a column behind the end is the end. */
  readonly goTo: (line: number, column: number) => Promise<void>;
  /** Waits for a line that holds a text, hints behind it included. */
  readonly lineWith: (text: string) => Promise<void>;
  /** The entries of the problems panel that hold a text. */
  readonly problem: (text: string) => Locator;
  readonly picture: (name: string) => Promise<void>;
}

export function handsOn(page: Page, pictures: string): Hands {
  const input = page.locator(".quick-input-widget input.input:visible").first();
  const pick: Hands["pick"] = async (typed, shown) => {
    await input.waitFor();
    await input.fill(typed);
    await page.locator(".quick-input-list .monaco-list-row", { hasText: shown }).first().click();
  };
  return {
    pick,
    openFile: async (name) => {
      await page.keyboard.press("Control+P");
      await pick(name, name);
      await page.locator(`.tab.active[aria-label^="${name}"]`).waitFor();
    },
    command: async (title) => {
      const shown = title.split(": ").at(-1) ?? title;
      const entry = page.locator(".quick-input-list .monaco-list-row", { hasText: shown }).first();
      // The palette lists what is known when it is opened, which in a new window is not everything yet.
      for (let round = 0; round < 15; round++) {
        await page.keyboard.press("F1");
        await input.fill(`>${title}`);
        if (
          await entry.waitFor({ timeout: 2000 }).then(
            () => true,
            () => false,
          )
        )
          break;
        await page.keyboard.press("Escape");
      }
      await entry.click();
    },
    goTo: async (line, column) => {
      await page.keyboard.press("Control+G");
      await input.waitFor();
      await input.fill(`:${line}:${column}`);
      // Pressed before it is offered, Enter does nothing.
      await page
        .locator(".quick-input-list .monaco-list-row", { hasText: `line ${line}` })
        .first()
        .waitFor();
      await page.keyboard.press("Enter");
      await page.locator(".quick-input-widget").waitFor({ state: "hidden" });
    },
    lineWith: async (text) => {
      for (let round = 0; round < 100; round++) {
        const lines = await page.locator(".view-line").allTextContents();
        // Blanks are shown as no-break spaces.
        if (lines.some((line) => line.replaceAll("\u00a0", " ").includes(text))) return;
        await page.waitForTimeout(100);
      }
      assert.fail(`no line reads '${text}'`);
    },
    problem: (text) => page.locator(".markers-panel .monaco-list-row", { hasText: text }),
    picture: async (name) => {
      await page.screenshot({ path: join(pictures, `${name}.png`) });
    },
  };
}
