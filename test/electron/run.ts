// Runs the suite in a desktop editor, which is downloaded; where it cannot be, `npm run test:editor` runs the same suite.
import { join } from "node:path";
import { runTests } from "@vscode/test-electron";
import { bundleSuite } from "./bundle.ts";

const root = join(import.meta.dirname, "../..");

process.exitCode = await runTests({
  extensionDevelopmentPath: root,
  extensionTestsPath: await bundleSuite(root),
  launchArgs: ["--disable-extensions", "--skip-welcome", "--skip-release-notes"],
});
