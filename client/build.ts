// Bundles what runs outside the sources: the command, the language server and the extension, for Node and for browsers.
import { chmodSync, mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename } from "node:path";
import { type BuildOptions, build, type Plugin } from "esbuild";
import { bundleScript, commandOf, compiledPath } from "../server/cli/command-bundle.ts";
import { nodeIo } from "../server/cli/node-io.ts";

const root = new URL("../", import.meta.url).pathname;
const out = `${root}dist/`;

const common: BuildOptions = { bundle: true, minify: true, legalComments: "linked", logLevel: "warning" };

/**
 * What is not needed at once is a bundle of its own: what draws, globs and the server of the command, the client of the
 * extension. Programs, which Commander could start, we have none.
 */
const apart: Plugin = {
  name: "apart",
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /\/(draw|glob|serve|node-client)\.ts$/ }, ({ kind, path }) =>
      kind === "dynamic-import" ? { path: `./${basename(path, ".ts")}.cjs`, external: true } : undefined,
    );
    onResolve({ filter: /^node:child_process$/ }, ({ importer, path }) =>
      importer.includes("/commander/") ? { path, namespace: "nothing" } : undefined,
    );
    onLoad({ filter: /./, namespace: "nothing" }, () => ({ contents: "export default {};" }));
  },
};

/** Node loads CommonJS faster than modules: without waiting between files, and of its own parts only what is asked for. */
const command: BuildOptions = {
  ...common,
  outdir: out,
  outExtension: { ".js": ".cjs" },
  platform: "node",
  target: "node22",
  format: "cjs",
  define: { "import.meta.url": "__filename", "import.meta.dirname": "__dirname" },
  supported: { "dynamic-import": false },
  plugins: [apart],
  // The variant for Node waits for a canvas that is not there, which CommonJS cannot.
  alias: { "vega-canvas": `${root}node_modules/vega-canvas/build/vega-canvas.browser.js` },
  // A native module and a folder of fonts cannot be bundled; they are found beside the bundle at run time.
  external: ["@resvg/resvg-js", "dejavu-fonts-ttf"],
};

/** What a module of CommonJS is given. */
const MODULE = "exports,require,module,__filename,__dirname";

/** Pictures of the last tests, which are looked at after a build too. */
const KEPT = ["editor", "preview-shots"];
mkdirSync(out, { recursive: true });
for (const name of readdirSync(out)) {
  if (!KEPT.includes(name)) rmSync(`${out}${name}`, { recursive: true });
}

await Promise.all([
  build({
    ...command,
    entryPoints: {
      cli: `${root}server/cli/main.ts`,
      draw: `${root}server/cli/draw.ts`,
      glob: `${root}server/cli/glob.ts`,
      serve: `${root}server/cli/serve.ts`,
    },
  }),
  build({
    ...command,
    entryPoints: { command: `${root}server/cli/run.ts` },
    // As a module it does what a module does; as a script, which has none, it is the function that a module is.
    banner: { js: `((f)=>typeof module==="undefined"?f:f(${MODULE}))(function(${MODULE}){` },
    footer: { js: "})" },
  }),
  build({
    ...common,
    entryPoints: { extension: `${root}client/node.ts`, "node-client": `${root}client/node-client.ts` },
    outdir: out,
    outExtension: { ".js": ".cjs" },
    platform: "node",
    target: "node22",
    format: "cjs",
    external: ["vscode"],
    plugins: [apart],
    // Editors give extensions their interface through `require` only.
    supported: { "dynamic-import": false },
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

// npx links a copy of the repository once, and goes on to look for what the command was called then.
writeFileSync(`${out}cli.js`, '#!/usr/bin/env node\nimport "./cli.cjs";\n');
for (const name of ["cli.cjs", "cli.js"]) chmodSync(`${out}${name}`, 0o755);

// One check is run, and the code that the engine has compiled for it is kept for every check that follows.
const bundle = `${out}command.cjs`;
const script = bundleScript(bundle);
const { run } = commandOf(script, bundle, createRequire(bundle));
const quiet = { ...nodeIo(), out: () => undefined, err: () => undefined };
await run(["check", `${root}samples/first.headnote`], quiet);
writeFileSync(compiledPath(bundle), script.createCachedData());
