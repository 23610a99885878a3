// How long it took to activate the extension, as the workbench itself has measured it.
import type { Page } from "playwright-core";
import type { Hands } from "./hands.ts";

/** In ms. */
export interface Activation {
  /** Reading and running the bundle. */
  readonly load: number;
  readonly call: number;
  /** Waiting for what the call has left to do. */
  readonly finish: number;
}

/** Prints it: a machine that does other work besides is no place for a limit. */
export async function tellActivation(page: Page, hands: Hands): Promise<void> {
  const { load, call, finish } = await activationIn(page, hands);
  console.log(`     activated in ${load} + ${call} + ${finish} ms: loading, calling, finishing`);
}

/** Reads it in the workbench's own report, which it leaves closed. */
export async function activationIn(page: Page, { command }: Hands): Promise<Activation> {
  await command("Developer: Startup Performance");
  const report = page.locator(".editor-instance .view-lines", { hasText: "System Info" });
  await report.click();
  let row: readonly string[] | undefined;
  // What is copied comes a little later, and the report after its tab.
  for (let round = 0; round < 50 && row === undefined; round++) {
    await page.keyboard.press("Control+a");
    await page.keyboard.press("Control+c");
    await page.waitForTimeout(200);
    const text: string = await page.evaluate("navigator.clipboard.readText()");
    row = text
      .split("\n")
      .find((line) => line.startsWith("| headnote.headnote "))
      ?.split("|");
  }
  await command("View: Close Editor");
  const [load, call, finish] = (row ?? []).slice(3, 6).map(Number);
  if (load === undefined || call === undefined || finish === undefined) {
    throw new Error("the workbench does not tell how long it took to activate the extension");
  }
  return { load, call, finish };
}
