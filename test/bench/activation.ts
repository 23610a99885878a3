// Starts a real workbench on a record, again and again, and takes down how long it takes to activate the extension.
import { spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { join } from "node:path";
import { type Activation, activationIn } from "../editor/activation.ts";
import { handsOn } from "../editor/hands.ts";
import { asBuiltIn, servePackage } from "../editor/serve-package.ts";
import { makeShop } from "../editor/shop.ts";
import { openWorkbench } from "../editor/workbench.ts";

const root = join(import.meta.dirname, "../..");

/** Each start has an extension host of its own; the package has been made. */
export async function activations(
  where: "process" | "worker",
  starts: number,
): Promise<readonly Activation[]> {
  const { status } = spawnSync("bash", [join(root, "test/editor/setup.sh")], { stdio: "inherit" });
  if (status !== 0) throw new Error("the workbench could not be installed");
  const served = where === "worker" ? await servePackage(root) : undefined;
  const folder = makeShop({});
  const bench = await openWorkbench(
    folder,
    served === undefined
      ? { vsix: join(root, "headnote.vsix") }
      : { before: (page) => asBuiltIn(page, served.port) },
  );
  const { page } = bench;
  const hands = handsOn(page, folder);
  try {
    const found: Activation[] = [];
    for (let start = 0; start < starts; start++) {
      if (start > 0) await page.reload();
      await page.waitForSelector(".monaco-workbench .statusbar-item", { timeout: 90_000 });
      await hands.openFile("monday.headnote");
      await page.locator(".squiggly-error").first().waitFor({ timeout: 60_000 });
      found.push(await activationIn(page, hands));
      await hands.command("View: Close Editor");
    }
    return found;
  } finally {
    await bench.stop();
    served?.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}
