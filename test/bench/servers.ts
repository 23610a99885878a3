// Times the language server over stdio beside servers of other formats, and what the extension weighs; writes SERVERS.md.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Activation } from "../editor/activation.ts";
import { activations } from "./activation.ts";
import { type BundlePart, bundleParts } from "./bundle-parts.ts";
import { jsonText, recordText, SCHEMA, type Text, yamlText } from "./server-texts.ts";
import { timedFolder } from "./timed-folder.ts";
import { type Candidate, type TimedServer, timedServer, type Work } from "./timed-server.ts";

const SIZES = [1_000, 10_000, 50_000];
const WORKS: readonly Work[] = ["edit to findings", "completion after an edit", "hover"];
const EDIT_BUDGETS = ["2 ms", "5 ms", "10 ms"];
const RECORDS = 2_000;
const RECORD_LINES = 50;
/** Each server is asked in turn, as often as fits into this; slow ones are asked less often. */
const ROUNDS = 60;
const WARM = 10;
const LONGEST = 8_000;
/** Of a real workbench. */
const STARTS = 9;

const here = import.meta.dirname;
const root = join(here, "../..");
const others = join(here, "servers/node_modules");
const OURS = [join(root, "dist/cli.cjs"), "lsp", "--stdio"];
const folder = mkdtempSync(join(tmpdir(), "headnote-servers-"));

try {
  if (!existsSync(others))
    run("npm", ["ci", "--prefix", join(here, "servers"), "--ignore-scripts", "--no-audit", "--no-fund"]);
  const schema = join(folder, "schema.json");
  writeFileSync(schema, JSON.stringify(SCHEMA));
  const timed: string[][] = [];
  for (const [index, lines] of SIZES.entries()) {
    timed.push(...(await timeAll(lines, EDIT_BUDGETS[index] ?? "", pathToFileURL(schema).href)));
  }
  report(timed, [await timeSlipping(), ...(await timeFolder())], await weights(), await parts());
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function candidate(name: string, args: readonly string[], language: string, text: Text): Candidate {
  return { name, args, language, uri: pathToFileURL(join(folder, `timed.${language}`)).href, ...text };
}

function ours(text: Text): Candidate {
  return candidate("Headnote", OURS, "headnote", text);
}

/** All servers on texts of as many lines, in turn. */
async function timeAll(lines: number, editBudget: string, schema: string): Promise<string[][]> {
  const json = join(others, "vscode-langservers-extracted/bin/vscode-json-language-server");
  const yaml = join(others, "yaml-language-server/bin/yaml-language-server");
  const servers = await Promise.all(
    [
      ours(recordText(lines)),
      candidate("plain", [join(here, "plain-server.ts")], "plain", recordText(lines)),
      candidate("JSON", [json, "--stdio"], "json", jsonText(lines, schema)),
      candidate("YAML", [yaml, "--stdio"], "yaml", yamlText(lines, schema)),
    ].map(timedServer),
  );
  const rows: string[][] = [];
  for (const work of WORKS) {
    const times = await inTurn(servers, work);
    const mine = median(times[0] ?? []);
    const ratios = times.slice(1).map((list) => `${(median(list) / mine).toFixed(1)} x`);
    const budget = work === "edit to findings" ? editBudget : "5 ms";
    rows.push([`${work}, ${spaced(lines)} lines`, ...times.map(middleAndTail), ratios.join(", "), budget]);
  }
  for (const server of servers) await server.stop();
  return rows;
}

async function inTurn(servers: readonly TimedServer[], work: Work): Promise<readonly (readonly number[])[]> {
  const times = servers.map((): number[] => []);
  const spent = servers.map(() => 0);
  for (let round = 0; round < ROUNDS + WARM; round++) {
    for (const [index, server] of servers.entries()) {
      if ((spent[index] ?? 0) > LONGEST) continue;
      const time = await server.time(work);
      spent[index] = (spent[index] ?? 0) + time;
      times[index]?.push(time);
    }
  }
  // The first calls find a server whose code has not been compiled yet.
  return times.map((list) => list.slice(Math.min(WARM, Math.floor(list.length / 5))));
}

/** Our server on a record in which most rows have something wrong. */
async function timeSlipping(): Promise<string[]> {
  const lines = 10_000;
  const server = await timedServer(ours(recordText(lines, true)));
  const [times = []] = await inTurn([server], "edit to findings");
  const shown = server.findings();
  await server.stop();
  return [
    `edit to findings, ${spaced(lines)} lines with most rows wrong: ${shown} told`,
    middleAndTail(times),
  ];
}

/** Our server on a folder of records that share a bench and a head; once, since only the first time counts. */
async function timeFolder(): Promise<string[][]> {
  const { first, again, rename } = await timedFolder(OURS, join(folder, "records"), RECORDS, RECORD_LINES);
  const records = `${spaced(RECORDS)} records of ${RECORD_LINES} lines`;
  return [
    [`${records}, all judged for the first time`, digits(first)],
    [`${records}, none of them changed since`, digits(again)],
    [`${records}, their bench renamed`, digits(rename)],
  ];
}

/** What is downloaded, what is loaded, and how long it takes to load it and to activate. */
async function weights(): Promise<string[][]> {
  run("npm", ["run", "--silent", "package"], root);
  const size = (file: string) => statSync(join(root, file)).size;
  const kilo = (file: string) => `${(size(file) / 1e3).toFixed(0)} kB`;
  return [
    ["headnote.vsix", `${(size("headnote.vsix") / 1e6).toFixed(2)} MB`, "1 MB"],
    ["loaded to activate, `extension.cjs`", kilo("dist/extension.cjs"), "300 kB"],
    ["loaded behind that, `node-client.cjs`", kilo("dist/node-client.cjs"), ""],
    ["for browsers, all in one file", kilo("dist/web/extension.cjs"), "300 kB"],
    ["loading `extension.cjs`, ms", loading("dist/extension.cjs", "activate"), ""],
    ["loading `node-client.cjs`, ms", loading("dist/node-client.cjs", "nodeClient"), ""],
    ["loading the file for browsers, ms", loading("dist/web/extension.cjs", "activate"), ""],
    ["activating in a workbench, ms", await activating("process"), "50 ms"],
    ["activating in a workbench as in a browser, ms", await activating("worker"), "50 ms"],
  ];
}

function loading(bundle: string, entry: string): string {
  const args = [join(here, "load-bundle.cjs"), join(root, bundle), entry];
  const times = Array.from({ length: 15 }, () => {
    const { stdout, status, stderr } = spawnSync(process.execPath, args, { encoding: "utf8" });
    if (status !== 0) throw new Error(stderr);
    return Number(stdout);
  });
  return middleAndTail(times);
}

async function activating(where: "process" | "worker"): Promise<string> {
  const found = await activations(where, STARTS);
  const whole = found.map(({ load, call, finish }) => load + call + finish);
  const part = (of: keyof Activation) => digits(median(found.map((each) => each[of])));
  return `${middleAndTail(whole)} = ${part("load")} loading, ${part("call")} calling, ${part("finish")} finishing`;
}

/** What the extension host's two bundles are made of, the largest first. */
async function parts(): Promise<string[][]> {
  const client = join(root, "client/node-client.ts");
  const first = await bundleParts(join(root, "client/node.ts"), [client]);
  const behind = await bundleParts(client);
  const sizeIn = (bundle: readonly BundlePart[], of: string) =>
    bundle.find((part) => part.of === of)?.bytes ?? 0;
  const kilo = (bytes: number) => (bytes === 0 ? "" : `${(bytes / 1e3).toFixed(1)} kB`);
  return [...new Set([...first, ...behind].map(({ of }) => of))]
    .map((of) => [of, sizeIn(first, of), sizeIn(behind, of)] as const)
    .sort(([, a, b], [, c, d]) => c + d - a - b)
    .map(([of, active, later]) => [of, kilo(active), kilo(later)]);
}

function run(command: string, args: readonly string[], cwd = root): void {
  const { status, stderr } = spawnSync(command, args, { cwd, encoding: "utf8" });
  if (status !== 0) throw new Error(`${command} ${args.join(" ")} ended with ${status}: ${stderr}`);
}

function middleAndTail(times: readonly number[]): string {
  return `${digits(median(times))} (${digits(quantile(times, 0.95))})`;
}

function digits(time: number): string {
  return time < 10 ? time.toFixed(1) : time.toFixed(0);
}

function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

function spaced(count: number): string {
  return count.toLocaleString("en-US").replaceAll(",", " ");
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}

function report(timed: string[][], alone: string[][], weighed: string[][], parts: string[][]): void {
  const text = `# The server and the extension, timed

Written by \`npm run bench\`. Each server is a process that is asked over its standard input and output; milliseconds from the
first byte sent to the answer read, median (95th percentile). They are asked in turn, up to ${ROUNDS} times each and for some
${LONGEST / 1000} s at most, on texts of as many lines that hold the same readings. *Plain* is \`plain-server.ts\`: it splits the whole text again
and converts its cells. *JSON* is the server of VS Code and *YAML* \`yaml-language-server\`, versions in \`servers/package.json\`, both
with a schema for every line; the YAML server waits 200 ms by itself before it judges. An edit is one character in the middle.
Absolute times drift with what else the machine does meanwhile; what counts is how the columns of one line compare.

${cpus().length} processors, Node ${process.versions.node}.

${table(["work", "Headnote", "plain", "JSON", "YAML", "theirs / ours", "budget"], timed)}

${table(["work", "Headnote"], alone)}

A bundle is loaded in a fresh Node beside an empty interface of the editor. Activation is what a real workbench says of it
(*Developer: Startup Performance*), ${STARTS} starts; its extension host is busy with other extensions at the same time.

${table(["extension", "measured", "budget"], weighed)}

The bundles of the extension host are made of these (DEVELOPERS.md, D12, says why the second is not smaller):

${table(["package", "loaded to activate", "loaded behind that"], parts)}
`;
  writeFileSync(join(here, "SERVERS.md"), text);
  process.stdout.write(text);
}
