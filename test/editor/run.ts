// What a porter does in the editor, done in a real one with the packed extension; pictures of it go to dist/editor.
import { cpSync, mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { bundleSuite } from "../electron/bundle.ts";
import { byProcess } from "./by-process.ts";
import { byWorker } from "./by-worker.ts";
import { type Hands, handsOn, type Step } from "./hands.ts";
import { inHost } from "./in-host.ts";
import { everyPicture } from "./pictures.ts";
import { besideText } from "./preview.ts";
import { asBuiltIn, servePackage } from "./serve-package.ts";
import { makeShop } from "./shop.ts";
import { node, type Opening, openWorkbench, type Workbench } from "./workbench.ts";

const root = join(import.meta.dirname, "../..");
const vsix = join(root, "headnote.vsix");
const pictures = join(root, "dist/editor");
rmSync(pictures, { recursive: true, force: true });
mkdirSync(pictures, { recursive: true });

/** Sittings whose names hold this are done; all without it. */
const [only = ""] = process.argv.slice(2);

let passed = 0;
let failed = 0;

await sitting("the server in a process", { vsix }, byProcess);

await sitting("the curve beside the text", { vsix }, besideText);

await sitting("every picture beside the text", { vsix }, everyPicture, (folder) =>
  cpSync(join(root, "samples"), join(folder, "samples"), { recursive: true }),
);

const served = await servePackage(root);
await sitting(
  "the server in a worker, as in a browser without a machine behind it",
  { before: (page) => asBuiltIn(page, served.port) },
  byWorker,
);
served.stop();

const host = inHost(vsix, await bundleSuite(root), join(root, "dist/electron"));
await sitting("in the extension host", host.opening, (step) =>
  step("the suite of test/electron passes", async () => {
    const problem = await host.ended;
    if (problem !== undefined) throw new Error(problem);
  }),
);

console.log(`editor: ${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;

async function sitting(
  name: string,
  opening: Opening,
  act: (step: Step, hands: Hands, bench: Workbench, folder: string) => Promise<void>,
  /** Puts more into the folder before it is opened. */
  prepare: (folder: string) => void = () => undefined,
): Promise<void> {
  if (!name.includes(only)) return;
  console.log(name);
  const folder = makeShop({ headnote: join(root, "dist/cli.cjs"), node });
  prepare(folder);
  const bench = await openWorkbench(folder, opening);
  const hands = handsOn(bench.page, pictures);
  const step: Step = async (what, done) => {
    try {
      await done();
      passed++;
      console.log(`  ok ${what}`);
    } catch (error) {
      failed++;
      console.error(`  FAILED ${what}: ${error instanceof Error ? error.message : String(error)}`);
      await hands.picture(`failed-${failed}`);
    }
  };
  try {
    await act(step, hands, bench, folder);
  } finally {
    await bench.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}
