// Times the preview's page in a real browser: a redraw after an edit, and the first picture; writes PREVIEW.md.
import { writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import type { PreviewView } from "../../shared/messages/preview.ts";
import { type OpenPage, PLAIN, startPages } from "../preview/page.ts";

const ROUNDS = 31;
const OPENINGS = 9;
const rows: string[][] = [];
const pages = await startPages();

try {
  await redraw("one run of 40 points", 16, record(1, 40), { kind: "cursor" });
  await redraw("8 cylinders of 11 points overlaid", 50, record(8, 11), { kind: "all" });
  await redraw("one run of 5 000 points", 1000, record(1, 5000), { kind: "cursor" });
  await first("a run of 11 points", 300, record(1, 11));
  await first("a run of 5 000 points", 3000, record(1, 5000));
  report();
} finally {
  await pages.stop();
}

/** A record of runs on one stage. */
function record(runs: number, points: number): string {
  const head = `headnote 1
bench north
  shows      flow
  repeat     0.35 %
  settle     1.6 s
port intake
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in
session 2026-03-02
  bench      north
  port       intake
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       0.8 cfm at 28 inH2O
  entry      radiused
`;
  const blocks = Array.from({ length: runs }, (_, run) => {
    const lines = Array.from({ length: points }, (_, index) => {
      const lift = (0.6 * (index + 1)) / points;
      const flow = 240 * (1 - Math.exp(-lift / 0.25)) + run / 2;
      return `  ${lift.toFixed(4)}  28.0  ${flow.toFixed(1)}  1.4`;
    });
    const columns = "  lift[in]  depression[inH2O]  flow[cfm]  settle[s]";
    return `run i${run + 1}\n  cylinder ${run + 1}\n  stage "cut"\n${columns}\n${lines.join("\n")}\n`;
  });
  return head + blocks.join("");
}

/** One reading changed to and fro, by little enough for the axes to stay: from the message to the changed marks. */
async function redraw(
  what: string,
  budget: number,
  text: string,
  choice: { kind: "cursor" | "all" },
): Promise<void> {
  const opened = await pages.open({ text }, { state: { choice } });
  await opened.page.locator("#picture svg").waitFor();
  const before = opened.view();
  await opened.show(edited(text));
  const after = opened.view();
  const times = await timed(opened, before, after);
  const size = `${(JSON.stringify(after).length / 1000).toFixed(0)} kB`;
  rows.push([
    `redraw, ${what} (message of ${size})`,
    ms(median(times)),
    ms(quantile(times, 0.95)),
    `${budget} ms`,
  ]);
  await opened.close();
}

/** The third flow of the first run made larger by half a unit. */
function edited(text: string): string {
  const lines = text.split("\n");
  const at = lines.findIndex((line) => line.startsWith("  lift[")) + 3;
  const [lift, depression, flow, settle] = (lines[at] ?? "").trim().split(/\s+/);
  const larger = (Number(flow) + 0.5).toFixed(1);
  return lines.with(at, `  ${lift}  ${depression}  ${larger}  ${settle}`).join("\n");
}

function timed({ page }: OpenPage, a: PreviewView, b: PreviewView): Promise<number[]> {
  const shows = [a, b].map((view) => ({ type: "show", state: PLAIN, view }));
  // In the page, and in its own words: the tests know no page.
  return page.evaluate(
    `(async ([shows, rounds]) => {
      const svg = document.querySelector("#picture svg");
      const times = [];
      for (let round = 0; round < rounds; round++) {
        const show = shows[round % 2];
        const data = { ...show, view: { ...show.view, version: 100 + round } };
        const drawn = new Promise((resolve) => {
          const watch = new MutationObserver(() => { watch.disconnect(); resolve(performance.now()); });
          watch.observe(svg, { subtree: true, attributes: true, childList: true });
        });
        const start = performance.now();
        dispatchEvent(new MessageEvent("message", { data }));
        times.push((await drawn) - start);
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
      if (document.querySelector("#picture svg") !== svg) throw new Error("the picture was made anew");
      return times.slice(5);
    })(${JSON.stringify([shows, ROUNDS + 5])})`,
  );
}

/** From the beginning of the page's navigation to the picture in it, the service's answer included. */
async function first(what: string, budget: number, text: string): Promise<void> {
  const times: number[] = [];
  for (let round = 0; round < OPENINGS + 2; round++) {
    const opened = await pages.open({ text });
    await opened.page.locator("#picture svg").waitFor();
    times.push(
      await opened.page.evaluate<number>("performance.getEntriesByName('first-picture')[0].startTime"),
    );
    await opened.close();
  }
  const counted = times.slice(2);
  rows.push([`first picture of ${what}`, ms(median(counted)), ms(quantile(counted, 0.95)), `${budget} ms`]);
}

function report(): void {
  const heads = ["work", "median", "95 %", "budget"];
  const table = [heads, heads.map(() => "---"), ...rows]
    .map((cells) => `| ${cells.join(" | ")} |`)
    .join("\n");
  const text = `# Timings of the preview

Written by \`node test/bench/preview.ts\`, part of \`npm run bench\`: the page in headless Chromium, as it is built. A redraw is
the time from the message to the changed marks, the table's row and the check of the message included; the picture is not
made anew. The first picture is counted from the page's navigation.

${cpus().length} processors, Node ${process.versions.node}.

${table}
`;
  writeFileSync(join(import.meta.dirname, "PREVIEW.md"), text);
  console.log(table);
}

function ms(time: number): string {
  return `${time.toFixed(1)} ms`;
}

function median(times: readonly number[]): number {
  return quantile(times, 0.5);
}

function quantile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
