// Who may import whom: reads every import of every source file and prints the lines that break the table.
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { globSync } from "tinyglobby";
import { expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "..");

/** What the files of a folder may import beside each other; the longest folder that fits a file holds. */
interface Row {
  readonly folders: readonly string[];
  readonly packages: readonly string[];
  readonly node: boolean;
}

const BELOW_SERVICE = ["shared", "grammar", "server/analysis", "server/rules", "server/catalogue.ts"];
const BELOW_FRONTS = [...BELOW_SERVICE, "server/service"];

const TABLE: Readonly<Record<string, Row>> = {
  shared: { folders: [], packages: [], node: false },
  "shared/messages": { folders: ["shared"], packages: ["zod"], node: false },
  grammar: { folders: ["shared"], packages: [], node: false },
  "grammar/tokens.ts": { folders: ["shared", "grammar"], packages: ["chevrotain"], node: false },
  "grammar/lexer.ts": { folders: ["shared", "grammar"], packages: ["chevrotain"], node: false },
  "grammar/line-kind.ts": { folders: ["shared", "grammar"], packages: ["chevrotain"], node: false },
  "grammar/line-parser.ts": { folders: ["shared", "grammar"], packages: ["chevrotain"], node: false },
  "grammar/format.ts": { folders: ["shared", "grammar"], packages: ["chevrotain"], node: false },
  "server/analysis": { folders: ["shared", "grammar"], packages: [], node: false },
  "server/rules": { folders: ["shared", "grammar", "server/analysis"], packages: [], node: false },
  "server/catalogue.ts": {
    folders: ["shared", "grammar", "server/analysis", "server/rules"],
    packages: [],
    node: false,
  },
  "server/service": { folders: BELOW_SERVICE, packages: [], node: false },
  "server/lsp": {
    folders: [...BELOW_FRONTS, "shared/messages"],
    packages: ["vscode-languageserver", "vscode-languageserver-textdocument"],
    node: false,
  },
  "server/lsp/node.ts": {
    folders: [...BELOW_FRONTS, "server/lsp", "server/disk"],
    packages: ["vscode-languageserver"],
    node: true,
  },
  "server/disk": { folders: [...BELOW_FRONTS, "server/lsp/runtime.ts"], packages: [], node: true },
  "server/generate": { folders: BELOW_FRONTS, packages: ["zod"], node: false },
  "server/generate/main.ts": { folders: [...BELOW_FRONTS, "server/generate"], packages: [], node: true },
  client: {
    folders: ["shared/messages"],
    packages: ["vscode", "vscode-languageclient"],
    node: false,
  },
  "client/preview": {
    folders: ["shared/messages", "client/server.ts", "client/or-says-why.ts"],
    packages: ["vscode", "zod"],
    node: false,
  },
  "client/preview/page": {
    folders: ["shared/messages", "shared/render", "shared/text"],
    packages: [
      "vega-lite",
      "vega-dataflow",
      "vega-encode",
      "vega-interpreter",
      "vega-parser",
      "vega-transforms",
      "vega-util",
      "vega-view",
      "vega-view-transforms",
    ],
    node: false,
  },
  "client/build.ts": {
    folders: ["server/cli/command-bundle.ts", "server/cli/node-io.ts"],
    packages: ["esbuild"],
    node: true,
  },
  "server/cli": {
    folders: [
      ...BELOW_FRONTS,
      "server/disk",
      "server/lsp/node.ts",
      "server/lsp/server.ts",
      "server/generate/example.ts",
      "package.json",
    ],
    packages: ["commander", "tinyglobby", "ignore", "vega", "vega-lite", "@resvg/resvg-js"],
    node: true,
  },
};

interface Import {
  readonly file: string;
  readonly line: number;
  readonly from: string;
  /** Whether it is gone once the file runs. */
  readonly typeOnly: boolean;
}

const importForm =
  /^[ \t]*(?:import|export)\s[^;"]*?\bfrom\s+"([^"]+)"|^[ \t]*import\s+"([^"]+)"|\bimport\(\s*"([^"]+)"\s*\)/gm;

const files = globSync(["**/*.ts"], {
  cwd: ROOT,
  ignore: ["node_modules/**", "dist/**", "test/**", "samples/**"],
}).sort();
const imports: readonly Import[] = files.flatMap((file) => {
  const text = readFileSync(join(ROOT, file), "utf8");
  return [...text.matchAll(importForm)].map((match) => ({
    file,
    line: text.slice(0, match.index + match[0].length).split("\n").length,
    from: match[1] ?? match[2] ?? match[3] ?? "",
    typeOnly: /^\s*(?:import|export)\s+type\s/.test(match[0]),
  }));
});

function isIn(path: string, folder: string): boolean {
  return path === folder || path.startsWith(`${folder}/`);
}

/** The folder of the table that a file belongs to. */
function rowOf(file: string): string | undefined {
  return Object.keys(TABLE)
    .filter((folder) => isIn(file, folder))
    .sort((a, b) => b.length - a.length)[0];
}

function targetOf({ file, from }: Import): string {
  return join(dirname(file), from).replaceAll("\\", "/");
}

function packageOf(from: string): string {
  return from
    .split("/")
    .slice(0, from.startsWith("@") ? 2 : 1)
    .join("/");
}

/** Why an import is not allowed. */
function offence(entry: Import): string | undefined {
  const folder = rowOf(entry.file);
  const row = folder === undefined ? undefined : TABLE[folder];
  if (folder === undefined || row === undefined) return "its folder has no row in the table";
  if (entry.from.startsWith("node:")) return row.node ? undefined : "this folder knows no platform";
  if (!entry.from.startsWith(".")) {
    return row.packages.includes(packageOf(entry.from)) ? undefined : "this folder may not use the package";
  }
  const target = targetOf(entry);
  return [folder, ...row.folders].some((allowed) => isIn(target, allowed))
    ? undefined
    : "this folder may not import that one";
}

test("imports were found at all", () => {
  expect(imports.length).toBeGreaterThan(files.length);
});

test("every import is one that the table allows", () => {
  const broken = imports.flatMap((entry) => {
    const why = offence(entry);
    return why === undefined ? [] : [`${entry.file}:${entry.line}: "${entry.from}": ${why}`];
  });
  expect(broken).toEqual([]);
});

test("every row of the table stands for something", () => {
  const empty = Object.keys(TABLE).filter((folder) => !files.some((file) => isIn(file, folder)));
  expect(empty).toEqual([]);
});

test("no file reaches itself through its imports", () => {
  const targets = Map.groupBy(
    imports.filter(({ from, typeOnly }) => from.startsWith(".") && !typeOnly),
    ({ file }) => file,
  );
  const done = new Set<string>();
  const cycles: string[] = [];
  const visit = (file: string, way: readonly string[]): void => {
    const met = way.indexOf(file);
    if (met >= 0) cycles.push([...way.slice(met), file].join(" -> "));
    if (met >= 0 || done.has(file)) return;
    for (const entry of targets.get(file) ?? []) visit(targetOf(entry), [...way, file]);
    done.add(file);
  };
  for (const file of files) visit(file, []);
  expect(cycles).toEqual([]);
});
