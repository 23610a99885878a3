// Measures traces of two million samples: read from a logger's file, analysed, and made ready to draw; writes TRACES.md.
import { writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { readLog } from "../../server/analysis/log-file.ts";
import { createProject } from "../../server/analysis/project.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../server/generate/example.ts";
import { tracedRun } from "../../server/rules/examples.ts";
import { evaluateTrace } from "../../shared/calc/trace/evaluate-trace.ts";
import { normalNumbers } from "../../shared/calc/trace/noise.ts";
import { unit } from "../../shared/render/display-units.ts";
import { traceChart } from "../../shared/render/trace-chart.ts";
import { makeTrace } from "../kit/traces.ts";

const ROUNDS = 5;
const SAMPLES = 2_000_000;
const log = {
  path: "t.csv",
  time: { column: "t", unit: unit("s") },
  depression: { column: "dp", unit: unit("Pa") },
  flow: { column: "q", unit: unit("m3/s") },
};

const [owner] = analysed();
const made = makeTrace(
  {
    count: SAMPLES,
    step: 1e-5,
    deadTime: 0.2,
    timeConstant: 0.8,
    noise: 10,
    flowNoise: 0.004,
    drop: 0.03,
    at: 6,
  },
  normalNumbers(3),
);
const quoted = owner?.result.setup.quote.value.value ?? 1;
const text = csvText();
const read = readLog(text, log);
if ("problem" in read || owner === undefined) throw new Error("the log cannot be read");
const raw = { samples: read.samples, problems: [], isFlow: false };
const result = evaluateTrace(owner.placed.entity, owner.result.setup, raw);
if (result.steps.length !== 1) throw new Error("the letting-go was not found");

const rows = [
  ["bare: cut at line ends and commas, numbers made", "", median(() => bare(text))],
  [`read a CSV file of ${(text.length / 1e6).toFixed(0)} MB`, "", median(() => readLog(text, log))],
  ["analyse", "2 000 ms", median(() => evaluateTrace(owner.placed.entity, owner.result.setup, raw))],
  ["make ready to draw", "", median(() => traceChart(result))],
] as const;
const table = rows
  .map(([work, budget, time]) => `| ${work} | ${time.toFixed(0)} ms | ${budget} |`)
  .join("\n");
const page = `# Two million samples

Written by \`npm run bench\` on ${cpus().length} cores, Node ${process.version}; median of ${ROUNDS} rounds. Times drift from
machine to machine; the first row is the yardstick.

| work | time | at most |
|---|---:|---:|
${table}
`;
writeFileSync(join(import.meta.dirname, "TRACES.md"), page);
process.stdout.write(page);

function analysed() {
  const analysis = createProject(memoryFiles(exampleFiles(tracedRun(0)), "")).analyse(FIRST_EXAMPLE_FILE);
  return "problem" in analysis ? [] : analysis.traces;
}

function csvText(): string {
  const { time, depression } = made.samples;
  const lines = ["t,dp,q"];
  for (let at = 0; at < SAMPLES; at++) {
    const pressure = depression[at] ?? 0;
    // What the display shows at its own depression.
    const flow = (made.flow[at] ?? 0) * Math.sqrt(Math.max(0, pressure) / quoted);
    lines.push(
      `${(time[at] ?? 0).toFixed(5)},${pressure.toFixed(1)},${(Number.isNaN(flow) ? 0 : flow).toFixed(5)}`,
    );
  }
  return lines.join("\n");
}

function bare(csv: string): number {
  let sum = 0;
  for (const line of csv.split("\n")) for (const cell of line.split(",")) sum += Number(cell);
  return sum;
}

function median(work: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(ROUNDS / 2)] ?? 0;
}
