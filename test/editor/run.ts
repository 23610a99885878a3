// What a porter does in the editor, done in a real one with the packed extension; pictures of it go to dist/editor.
import assert from "node:assert/strict";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { openWorkbench } from "./workbench.ts";

const root = join(import.meta.dirname, "../..");
const shots = join(root, "dist/editor");
mkdirSync(shots, { recursive: true });

const SHOP = `headnote 1

bench north "quick bench"
  shows      flow
  repeat     0.35 %
  within     0.2 inH2O

port intake
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in
`;

const MONDAY = `headnote 1
include "shop.headnote"

session 2026-03-02T09:30+01:00 "as cast"
  bench      north
  port       intake
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       0.8 cfm at 28 inH2O
  entry      radiused

run i1
  stage      "as cast"

  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               27,2      109.6
     0.300               28.0      157.0
`;

const folder = mkdtempSync(join(tmpdir(), "headnote-shop-"));
writeFileSync(join(folder, "shop.headnote"), SHOP);
writeFileSync(join(folder, "monday.headnote"), MONDAY);
writeFileSync(join(folder, "headnote.json"), "{}\n");

const bench = await openWorkbench(folder, join(root, "headnote.vsix"));
const { page } = bench;
let passed = 0;
let failed = 0;

try {
  await step("a record opens, and what is wrong with it is underlined", async () => {
    await openFile("monday.headnote");
    await page.locator(".squiggly-error").first().waitFor({ timeout: 60_000 });
    await shot("1-underlined");
  });
  await step("the problems panel says what, and what to do", async () => {
    await command("Problems: Focus on Problems View");
    await page
      .locator(".markers-panel .monaco-list-row", { hasText: "the decimal mark is a point" })
      .first()
      .waitFor();
    await shot("2-problems");
  });
  await step("hints stand behind the rows", async () => {
    await page.locator(".view-line", { hasText: "54.2 ± 1.1 cfm" }).first().waitFor();
  });
  await step("a quick fix mends the number", async () => {
    await goTo(17, 27);
    await page.keyboard.press("Control+.");
    await page.locator(".action-widget .monaco-list-row", { hasText: "Write 27.2" }).first().waitFor();
    await shot("3-quick-fix");
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
    await shot("4-next-row");
  });
  await step("completion offers the units that fit", async () => {
    await goTo(7, 80);
    await page.keyboard.press("Enter");
    await page.keyboard.type("within 0.2 ");
    await page.locator(".suggest-widget .monaco-list-row", { hasText: "inH2O" }).first().waitFor();
    await shot("5-completion");
    await page.keyboard.type("inH2O");
    await page.keyboard.press("Escape");
  });
  await step("hover on a reading shows the way to its result", async () => {
    await goTo(19, 42);
    await command("Show or Focus Hover");
    await page.locator(".monaco-hover", { hasText: "through the meter" }).first().waitFor();
    await shot("6-hover");
  });
  await step("formatting brings the file into canonical form", async () => {
    await command("Format Document");
    await lineWith("within     0.2 inH2O");
  });
  await step("the outline shows session and runs", async () => {
    await page.keyboard.press("Control+Shift+O");
    await page.locator(".quick-input-list .monaco-list-row", { hasText: "i1" }).first().waitFor();
    await page
      .locator(".quick-input-list .monaco-list-row", { hasText: "session 2026-03-02" })
      .first()
      .waitFor();
    await shot("7-outline");
    await page.keyboard.press("Escape");
  });
  await step("a name is changed in both files", async () => {
    await goTo(5, 16);
    await page.keyboard.press("F2");
    const box = page.locator(".rename-box input");
    await box.waitFor();
    await box.fill("tower");
    await box.press("Enter");
    await lineWith("bench      tower");
    await openFile("shop.headnote");
    await lineWith('bench tower "quick bench"');
    await shot("8-renamed");
  });
} finally {
  await bench.stop();
  rmSync(folder, { recursive: true, force: true });
}
console.log(`editor: ${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

async function step(name: string, act: () => Promise<void>): Promise<void> {
  try {
    await act();
    passed++;
    console.log(`  ok ${name}`);
  } catch (error) {
    failed++;
    console.error(`  FAILED ${name}: ${error instanceof Error ? error.message : String(error)}`);
    await shot(`failed-${failed}`);
    if (failed === 1) console.error(bench.log().slice(-2000));
  }
}

async function shot(name: string): Promise<void> {
  await page.screenshot({ path: join(shots, `${name}.png`) });
}

async function openFile(name: string): Promise<void> {
  await page.keyboard.press("Control+P");
  await pick(name, name);
  await page.locator(".tab.active", { hasText: name }).waitFor();
}

async function command(title: string): Promise<void> {
  await page.keyboard.press("F1");
  await pick(`>${title}`, title.split(": ").at(-1) ?? title);
}

async function pick(typed: string, shown: string): Promise<void> {
  const input = page.locator(".quick-input-widget input.input:visible").first();
  await input.waitFor();
  await input.fill(typed);
  await page.locator(".quick-input-list .monaco-list-row", { hasText: shown }).first().click();
}

/** Puts the cursor at a line and column, both from 1; a column behind the end is the end. */
async function goTo(line: number, column: number): Promise<void> {
  await page.keyboard.press("Control+G");
  const input = page.locator(".quick-input-widget input.input:visible").first();
  await input.waitFor();
  await input.fill(`:${line}:${column}`);
  await page.keyboard.press("Enter");
  await page.locator(".quick-input-widget").waitFor({ state: "hidden" });
}

async function lineWith(text: string): Promise<void> {
  const found = await linesOf(page, (lines) => lines.some((line) => line.includes(text)));
  assert.ok(found, `no line reads '${text}'`);
}

/** Waits until the visible lines are as wanted. Blanks are shown as no-break spaces. */
async function linesOf(on: Page, wanted: (lines: readonly string[]) => boolean): Promise<boolean> {
  for (let round = 0; round < 60; round++) {
    const lines = await on.locator(".view-line").allTextContents();
    if (wanted(lines.map((line) => line.replaceAll("\u00a0", " ")))) return true;
    await on.waitForTimeout(100);
  }
  return false;
}
