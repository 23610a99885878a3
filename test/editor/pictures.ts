// Every picture beside the text, from the samples: a curve with its baseline, a trace, a ladder and a velocity map.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Hands, Step } from "./hands.ts";
import type { Workbench } from "./workbench.ts";

interface Sample {
  readonly kind: string;
  readonly file: string;
  /** What the line of its heading begins with. */
  readonly at: string;
  /** What stands in the picture, and in the words beside it. */
  readonly drawn: string;
  readonly told: string;
}

const BLENDED = "2026-04-11-bowl-blend.headnote";
const SAMPLES: readonly Sample[] = [
  { kind: "Curve", file: BLENDED, at: "run in3-bowl-blend", drawn: "Gain over", told: "mean" },
  {
    kind: "Trace",
    file: "2026-03-07-as-cast.headnote",
    at: "trace 0.500 in",
    drawn: "Time since opening",
    told: "samples",
  },
  { kind: "Ladder", file: BLENDED, at: "ladder 0.500 in", drawn: "Depression", told: "power" },
  { kind: "Map", file: BLENDED, at: 'map "at the pinch"', drawn: "at the pinch", told: "places" },
];

/** The folder of the window has a copy of `samples` in it. */
export async function everyPicture(
  step: Step,
  hands: Hands,
  { page }: Workbench,
  folder: string,
): Promise<void> {
  const { openFile, command, pick, goTo, picture } = hands;
  const inside = page.frameLocator("iframe.webview.ready").frameLocator("#active-frame");
  const lineOf = ({ file, at }: Sample): number => {
    const lines = readFileSync(join(folder, "samples/ironside-eight", file), "utf8").split("\n");
    return lines.findIndex((line) => line.startsWith(at)) + 1;
  };
  const toText = () => command("View: Focus First Editor Group");
  const turnTo = async (sample: Sample): Promise<void> => {
    await toText();
    await openFile(sample.file);
    // Away from the tab, whose tooltip would be in the picture.
    await page.mouse.move(640, 790);
    await goTo(lineOf(sample) + 2, 1);
    await page.locator(`.tab[aria-label^="${sample.kind}: ${sample.file}"]`).waitFor();
    await inside.locator("#picture svg", { hasText: sample.drawn }).waitFor();
    await inside.locator("#page", { hasText: sample.told }).waitFor();
  };

  await step("a panel is opened on a sample", async () => {
    await openFile(BLENDED);
    await page.locator(".codelens-decoration").first().waitFor({ timeout: 60_000 });
    await command("Headnote: Show Curve to the Side");
    await inside.locator("#picture svg").waitFor({ timeout: 60_000 });
    await toText();
  });
  for (const theme of ["light", "dark"]) {
    for (const sample of SAMPLES) {
      await step(
        `a ${sample.kind.toLowerCase()} is drawn, ${theme}, and the panel is called after it`,
        async () => {
          await turnTo(sample);
          await picture(`20-${sample.kind.toLowerCase()}-${theme}`);
        },
      );
    }
    await step(`all runs of a record are drawn in one picture, ${theme}`, async () => {
      await openFile("2026-04-25-all-intakes.headnote");
      await inside.locator("#picker").selectOption({ label: "all 8 runs" });
      await inside.locator("#picture", { hasText: "Difference from the mean of 8 cylinders" }).waitFor();
      await picture(`20-runs-${theme}`);
      await toText();
    });
    if (theme === "light") {
      await step("the theme is changed under a picture", async () => {
        await command("Preferences: Toggle between Light/Dark Themes");
        await inside.locator("#picture .frame.is-dark").waitFor();
      });
    }
  }
  await step("a place on a map leads to its line", async () => {
    const map = SAMPLES.find(({ kind }) => kind === "Map");
    assert.ok(map);
    await turnTo(map);
    await inside.locator("#results button.line").nth(4).click();
    await inside.locator("#results tr[aria-current]", { hasText: String(lineOf(map) + 9) }).waitFor();
    await toText();
    const row = page.locator(".statusbar-item", { hasText: `Ln ${lineOf(map) + 9}` });
    await row.first().waitFor();
  });
  await step("a ladder is saved as what it is", async () => {
    const ladder = SAMPLES.find(({ kind }) => kind === "Ladder");
    assert.ok(ladder);
    await turnTo(ladder);
    await command("Headnote: Save Picture");
    await page.locator(".quick-input-title", { hasText: "Save Ladder As" }).waitFor();
    await pick("csv", "csv");
    await page.locator(".quick-input-title", { hasText: /^Save Ladder$/ }).waitFor();
    const place = page.locator(".quick-input-widget input.input:visible").first();
    for (let round = 0; round < 100 && !(await place.inputValue()).endsWith(".csv"); round++) {
      await page.waitForTimeout(100);
    }
    const name = await place.inputValue();
    await page.keyboard.press("Enter");
    for (let round = 0; round < 100 && !existsSync(name); round++) await page.waitForTimeout(100);
    assert.equal(readFileSync(name, "utf8").split("\n").length, 7);
  });
}
