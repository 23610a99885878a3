// A porter's way through a record, with the server as a process, as on a desktop or a remote machine.
import assert from "node:assert/strict";
import { tellActivation } from "./activation.ts";
import type { Hands, Step } from "./hands.ts";
import type { Workbench } from "./workbench.ts";

export async function byProcess(step: Step, hands: Hands, { page }: Workbench): Promise<void> {
  const { openFile, command, pick, goTo, lineWith, problem, picture } = hands;
  const listed = (text: string) =>
    page.locator(".quick-input-list .monaco-list-row", { hasText: text }).first();

  await step("a command that comes before the server waits for it", async () => {
    await command("Headnote: New Session");
    await page
      .locator(".quick-input-list .monaco-list-row", { hasText: "north" })
      .first()
      .waitFor({ timeout: 60_000 });
    await page.keyboard.press("Escape");
  });
  await step("a record opens in colours, and what is wrong with it is underlined", async () => {
    await openFile("monday.headnote");
    await page.locator(".squiggly-error").first().waitFor({ timeout: 60_000 });
    const colours = () =>
      page
        .locator(".view-line span span")
        .evaluateAll((tokens) => new Set(tokens.map((token) => token.className)).size);
    // The workbench reads the grammar by itself, and may be later than the server.
    for (let round = 0; round < 100 && (await colours()) < 5; round++) await page.waitForTimeout(100);
    assert.ok((await colours()) >= 5, `only ${await colours()} kinds of tokens are told apart`);
    await picture("1-underlined");
  });
  await step("the problems panel says what, and what to do", async () => {
    await command("Problems: Focus on Problems View");
    await problem("the decimal mark is a point").first().waitFor();
    await picture("2-problems");
  });
  await step("hints stand behind the rows", async () => {
    await lineWith("54.2 ± 1.");
  });
  await step("a quick fix mends the number", async () => {
    await goTo(17, 27);
    const fix = page.locator(".action-widget .monaco-list-row", { hasText: "Write 27.2" }).first();
    // The list of fixes goes away again where the editor is drawn anew meanwhile.
    for (let round = 0; round < 10 && !(await fix.isVisible()); round++) {
      await page.keyboard.press("Control+.");
      await fix.waitFor({ timeout: 3000 }).catch(() => undefined);
    }
    await fix.waitFor();
    await picture("3-quick-fix");
    await page.keyboard.press("Enter");
    await page.locator(".squiggly-error").first().waitFor({ state: "detached" });
    await page.locator(".squiggly-warning").first().waitFor();
  });
  await step("Enter behind a row starts the next one with the next lift and the target", async () => {
    await goTo(18, 80);
    await page.keyboard.press("Enter");
    await lineWith("0.400               28.0");
    await page.keyboard.type("181.0");
    await lineWith("0.400               28.0  181.0");
    await picture("4-next-row");
  });
  await step("completion offers the units that fit", async () => {
    await goTo(7, 80);
    await page.keyboard.press("Enter");
    await page.keyboard.type("within 0.2 ");
    await page.locator(".suggest-widget .monaco-list-row", { hasText: "inH2O" }).first().waitFor();
    await picture("5-completion");
    await page.keyboard.type("inH2O");
    await page.keyboard.press("Escape");
  });
  await step("hover on a reading shows the way to its result", async () => {
    await goTo(19, 42);
    await command("Show or Focus Hover");
    await page.locator(".monaco-hover", { hasText: "through the meter" }).first().waitFor();
    await picture("6-hover");
    await page.keyboard.press("Escape");
  });
  await step("formatting brings the file into canonical form", async () => {
    await command("Format Document");
    // The workbench gives up formatting where the cursor is moved meanwhile.
    await lineWith("28.0      181.0");
    await goTo(8, 1);
    await lineWith("within     0.2 inH2O");
  });
  await step("the outline shows session and runs", async () => {
    await page.keyboard.press("Control+Shift+O");
    await listed("i1").waitFor();
    await listed("session 2026-03-02").waitFor();
    await picture("7-outline");
    await page.keyboard.press("Escape");
  });
  await step("above a run stands its gain, and a click shows the baseline below it", async () => {
    await openFile("tuesday.headnote");
    const lens = page.locator(".codelens-decoration a", { hasText: "mean over i1" }).first();
    await lens.waitFor();
    await lens.click();
    const peek = page.locator(".peekview-widget .view-line");
    await peek.filter({ hasText: "0.400" }).first().waitFor();
    await picture("8-baseline");
    await page.keyboard.press("Escape");
    await openFile("monday.headnote");
  });
  await step("a name is changed in all files", async () => {
    await goTo(5, 16);
    await page.keyboard.press("F2");
    const box = page.locator(".rename-box input");
    await box.waitFor();
    await box.fill("tower");
    await box.press("Enter");
    await lineWith("bench      tower");
    await openFile("shop.headnote");
    await lineWith('bench tower "quick bench"');
    await picture("9-renamed");
    await command("File: Save All Files");
  });
  await step("all records are checked by the command, and nothing is listed twice", async () => {
    await command("Headnote: Check All Records");
    await page.locator(".xterm-rows", { hasText: "3 files, 1 warning" }).first().waitFor();
    await picture("10-checked");
    await command("Problems: Focus on Problems View");
    await problem("off the target").first().waitFor();
    assert.equal(await problem("off the target").count(), 1);
  });
  await step("a record is compared with what was committed", async () => {
    await openFile("monday.headnote");
    await command("Headnote: Compare with HEAD");
    await page.locator(".tab.active", { hasText: "monday.headnote (HEAD ↔ now)" }).waitFor();
    await page.locator(".monaco-diff-editor .line-delete").first().waitFor();
    await picture("11-compared");
  });
  await step("a new session knows the shop, and waits for its first lift", async () => {
    await openFile("monday.headnote");
    await command("Headnote: New Session");
    await pick("tower", "tower");
    await pick("intake", "intake");
    await pick("as cast", "as cast");
    await page.locator(".tab.active", { hasText: "-as-cast.headnote" }).waitFor();
    await page.keyboard.type("0.100 28.0 55.0");
    await lineWith("  0.100 28.0 55.0");
    await lineWith("55.00 ±");
    await problem("'air' needs").first().waitFor();
    await picture("12-new-session");
    await goTo(1, 1);
    await lineWith('include "shop.headnote"');
    await lineWith("bench      tower");
  });
  await step("a file that is renamed is included by its new name", async () => {
    await openFile("shop.headnote");
    await command("File: Reveal Active File in Explorer View");
    await page.keyboard.press("F2");
    const box = page
      .locator(".explorer-item-edited input, .explorer-folders-view .monaco-inputbox input")
      .first();
    await box.waitFor();
    await box.fill("benches.headnote");
    await box.press("Enter");
    // The workbench asks before an extension changes further files.
    await page.locator(".monaco-dialog-box").getByRole("button", { name: "OK" }).click();
    await page.locator('.tab[aria-label^="benches.headnote"]').waitFor();
    await page.locator(".explorer-item-edited").waitFor({ state: "detached" });
    await openFile("monday.headnote");
    await goTo(1, 1);
    await lineWith('include "benches.headnote"');
    await picture("14-included");
  });
  await step("a server that is restarted judges as before", async () => {
    await openFile("monday.headnote");
    await command("Headnote: Restart Language Server");
    await lineWith("156.2 ± 1.");
  });
  await step("the workbench tells how long activation took", () => tellActivation(page, hands));
}
