// Bundles what runs outside the sources: the command, the language server and the extension, for Node and for browsers.
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { type BuildOptions, build } from "esbuild";

const root = new URL("../", import.meta.url).pathname;
const out = `${root}dist/`;

const common: BuildOptions = { bundle: true, minify: true, legalComments: "linked", logLevel: "warning" };

/** Pictures of the last tests, which are looked at after a build too. */
const KEPT = ["editor", "preview-shots"];
mkdirSync(out, { recursive: true });
for (const name of readdirSync(out)) {
  if (!KEPT.includes(name)) rmSync(`${out}${name}`, { recursive: true });
}

await Promise.all([
  build({
    ...common,
    entryPoints: { cli: `${root}server/cli/main.ts` },
    outdir: out,
    // What draws is loaded only when something is drawn.
    splitting: true,
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
  }),
  build({
    ...common,
    entryPoints: { extension: `${root}client/node.ts` },
    outdir: out,
    outExtension: { ".js": ".cjs" },
    platform: "node",
    target: "node22",
    format: "cjs",
    external: ["vscode"],
  }),
  build({
    ...common,
    entryPoints: { extension: `${root}client/browser.ts` },
    outdir: `${out}web`,
    // The package is one of ES modules, which editors do not load in a worker unless the name says otherwise.
    outExtension: { ".js": ".cjs" },
    platform: "browser",
    target: "es2022",
    format: "cjs",
    external: ["vscode"],
  }),
  build({
    ...common,
    entryPoints: { server: `${root}server/lsp/main.ts` },
    outdir: out,
    platform: "node",
    conditions: ["browser"],
    target: "es2022",
    format: "iife",
    // One script for a process and a worker. The package's scripts are ES modules in Node, so there is no `require` in either.
    banner: { js: "var require=globalThis.process?.getBuiltinModule;" },
  }),
  build({
    ...common,
    entryPoints: { page: `${root}client/preview/page/main.ts`, style: `${root}client/preview/page/page.css` },
    entryNames: "page",
    outdir: `${out}preview`,
    platform: "browser",
    target: "es2022",
    format: "iife",
    // All that the compiler of charts takes from the whole library are a few helpers, which have a package of their own.
    alias: { vega: "vega-util" },
  }),
]);

// Installed as a command, the entry is run by its first line; chunks, which share the banner, must not have it.
const cli = `${out}cli.js`;
writeFileSync(cli, `#!/usr/bin/env node\n${readFileSync(cli, "utf8")}`);
chmodSync(cli, 0o755);
