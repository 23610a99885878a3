// Bundles what runs outside the sources: for now the command, whose charts are loaded only when they are asked for.
import { chmodSync, rmSync } from "node:fs";
import { build } from "esbuild";

const out = new URL("../dist/", import.meta.url).pathname;

rmSync(out, { recursive: true, force: true });

await build({
  entryPoints: { cli: new URL("../server/cli/main.ts", import.meta.url).pathname },
  outdir: out,
  bundle: true,
  splitting: true,
  minify: true,
  keepNames: false,
  platform: "node",
  target: "node22",
  format: "esm",
  chunkNames: "[name]-[hash]",
  // A native module and a folder of fonts cannot be bundled; they are found beside the bundle at run time.
  external: ["@resvg/resvg-js", "dejavu-fonts-ttf"],
  banner: {
    // Bundled CommonJS packages ask for `require`.
    js: 'import { createRequire as __createRequire } from "node:module";const require = __createRequire(import.meta.url);',
  },
  legalComments: "linked",
  logLevel: "warning",
});

chmodSync(`${out}cli.js`, 0o755);
