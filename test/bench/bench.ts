// Measures what the budgets are about and writes RESULTS.md: medians of whole processes, taken in turn with a yardstick.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { createService, type Service } from "../../server/service/service.ts";
import { aloneRecord, sharedRecords } from "./records.ts";

const ROUNDS = 9;
const here = import.meta.dirname;
const command = join(here, "../../dist/cli.cjs");
const bare = join(here, "bare.mjs");
const ownThread = join(here, "own-thread.cjs");
const folder = mkdtempSync(join(tmpdir(), "headnote-bench-"));
const [load = 0] = loadavg();
const rows: string[][] = [];
const threads: string[][] = [];

try {
  const big = join(folder, "big.headnote");
  writeFileSync(big, aloneRecord(100_000));
  const many = join(folder, "many");
  mkdirSync(many);
  for (const [name, text] of sharedRecords(1000, 100)) writeFileSync(join(many, name), text);
  const small = join(folder, "small.headnote");
  writeFileSync(small, aloneRecord(60));
  const records = readdirSync(many).map((name) => join(many, name));

  compare("check, one file of 100 000 lines", "2 x bare", [command, "check", big], [bare, big]);
  compare("check, 1 000 records of 100 lines", "2 x bare", [command, "check", many], [bare, ...records]);
  compare("cold check of one record", "start + 60 ms", [command, "check", small], ["-e", "0"]);
  for (const lines of [1_000, 10_000, 50_000]) edit(lines);
  report();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Whole processes in turn; a ratio is the median of the rounds' own ratios. */
function compare(work: string, budget: string, ours: readonly string[], yardstick: readonly string[]): void {
  const rounds = Array.from({ length: ROUNDS + 1 }, () => [run(ours), run(yardstick)] as const).slice(1);
  const mine = (of: keyof Measured) => median(rounds.map(([a]) => a[of])).toFixed(0);
  const theirs = (of: keyof Measured) => median(rounds.map(([, b]) => b[of])).toFixed(0);
  const ratio = (of: keyof Measured) => median(rounds.map(([a, b]) => a[of] / b[of])).toFixed(2);
  rows.push([work, `${mine("wall")} ms`, `${theirs("wall")} ms`, ratio("wall"), budget]);
  threads.push([
    work,
    `${mine("worked")} ms`,
    `${theirs("worked")} ms`,
    ratio("worked"),
    `${mine("memory")} MB`,
    `${theirs("memory")} MB`,
  ]);
}

/** Milliseconds on the clock and worked by the program's own thread, and megabytes at the peak. */
interface Measured {
  readonly wall: number;
  readonly worked: number;
  readonly memory: number;
}

function run(args: readonly string[]): Measured {
  const start = performance.now();
  const { status, stderr, output } = spawnSync(process.execPath, ["--require", ownThread, ...args], {
    encoding: "utf8",
    maxBuffer: 1 << 28,
    stdio: ["ignore", "pipe", "pipe", "pipe"],
  });
  const wall = performance.now() - start;
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}: ${stderr}`);
  return { wall, ...JSON.parse(output[3] ?? "") };
}

/** One character typed in the middle of a record, to its findings, in this process; against reading all anew. */
function edit(lines: number): void {
  const text = aloneRecord(lines).split("\n");
  const at = Math.floor(text.length / 2);
  let current = text.join("\n");
  const files = { read: () => ({ text: current }), root: () => "" };
  const service = createService({ files, config: () => DEFAULT_CONFIG });
  findingsOf(service);
  const times: number[] = [];
  const anew: number[] = [];
  for (let round = 0; round < 30; round++) {
    text[at] = `  0.${100 + round}  28.0  150.${round % 10}  1.2`;
    current = text.join("\n");
    const start = performance.now();
    service.changed();
    findingsOf(service);
    times.push(performance.now() - start);
    const again = performance.now();
    findingsOf(createService({ files, config: () => DEFAULT_CONFIG }));
    anew.push(performance.now() - again);
  }
  const mine = median(times.slice(5));
  const full = median(anew.slice(5));
  const size = lines.toLocaleString("en-US").replace(",", " ");
  const budget = lines === 1_000 ? "2 ms" : lines === 10_000 ? "5 ms" : "10 ms";
  rows.push([
    `edit to findings in process, ${size} lines (beside: all read anew)`,
    `${mine.toFixed(1)} ms`,
    `${full.toFixed(1)} ms`,
    (mine / full).toFixed(2),
    `${budget} over stdio`,
  ]);
}

/** Asks for them, since a file is judged only when they are asked for. */
function findingsOf(service: Service): number {
  const checked = service.check("record.headnote");
  return "problem" in checked ? Number.NaN : checked.findings.length;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function tableOf(head: readonly string[], body: readonly (readonly string[])[]): string {
  return [head, head.map(() => "---"), ...body].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}

function report(): void {
  const table = tableOf(["work", "Headnote", "yardstick", "ratio", "budget"], rows);
  const threadTable = tableOf(
    ["work", "Headnote", "yardstick", "ratio", "Headnote at its peak", "yardstick at its peak"],
    threads,
  );
  const text = `# Timings

Written by \`npm run bench\`. Medians of ${ROUNDS} rounds; Headnote and its yardstick run in turn, and the ratio is the median of the
rounds' own ratios, since absolute times drift with the machine. The yardstick of \`check\` is \`bare.mjs\`: it splits the same
text, converts its cells and scales them. That of the cold check is Node's own start.

${cpus().length} processors, Node ${process.versions.node}, a load of ${load.toFixed(0)} before the first round.

${table}

The time that the program's own thread has worked, which depends much less than the clock on what else the machine does
(other threads compile and collect meanwhile, which on a busy machine the clock waits for), and the most memory that the
process had:

${threadTable}
`;
  writeFileSync(join(here, "RESULTS.md"), text);
  process.stdout.write(text);
}
