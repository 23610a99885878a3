// The same extension where no program can run: its browser entry, with the server in a worker.
import assert from "node:assert/strict";
import { tellActivation } from "./activation.ts";
import type { Hands, Step } from "./hands.ts";
import type { Workbench } from "./workbench.ts";

export async function byWorker(step: Step, hands: Hands, { page }: Workbench): Promise<void> {
  const { openFile, command, goTo, lineWith, problem, picture } = hands;

  await step("a command that comes before the server waits for it", async () => {
    await command("Headnote: New Session");
    await page
      .locator(".quick-input-list .monaco-list-row", { hasText: "north" })
      .first()
      .waitFor({ timeout: 60_000 });
    await page.keyboard.press("Escape");
  });
  await step("a record is judged, with the files that it includes", async () => {
    await openFile("monday.headnote");
    await page.locator(".squiggly-error").first().waitFor({ timeout: 60_000 });
    await lineWith("156.2 ± 1.");
    await command("Problems: Focus on Problems View");
    await problem("the decimal mark is a point").first().waitFor();
    assert.equal(await problem("there is no").count(), 0);
    await picture("13-worker");
  });
  await step("Enter behind a row starts the next one", async () => {
    await goTo(18, 80);
    await page.keyboard.press("Enter");
    await lineWith("0.400               28.0");
  });
  await step("a server that is restarted judges as before", async () => {
    await command("Headnote: Restart Language Server");
    await goTo(18, 42);
    await page.keyboard.press("End");
    await page.keyboard.type(" oops");
    await problem("4 cells for 3 columns").first().waitFor();
  });
  await step("checking all records shows what the server has found", async () => {
    await command("Toggle Panel Visibility");
    await command("Headnote: Check All Records");
    await problem("the decimal mark is a point").first().waitFor();
  });
  await step("the workbench tells how long activation took", () => tellActivation(page, hands));
}
