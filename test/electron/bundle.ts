// Bundles the suite, because an extension host loads no TypeScript.
import { join } from "node:path";
import { build } from "esbuild";

/** The bundle's path. */
export async function bundleSuite(root: string): Promise<string> {
  const outfile = join(root, "dist/electron/suite.cjs");
  await build({
    entryPoints: [join(root, "test/electron/suite.ts")],
    outfile,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    external: ["vscode"],
  });
  return outfile;
}
