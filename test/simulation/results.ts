// Sets the tables of all simulations as one Markdown page.
import type { Rate } from "../kit/binomial.ts";
import { bySpeed, DROPS, detection, QUICK } from "./detection.ts";
import { earlyReadings } from "./early.ts";
import { knownAlarms, pooledAlarms, unequalAlarms } from "./false-alarms.ts";
import { HIDDEN_DROPS, hiddenBySpeed, hiddenDetection, shownByBoth } from "./hidden.ts";
import { CORRELATIONS, letGoAlarms, letGoDetection, STEPS } from "./letting-go.ts";
import { byOperator, upAndDown } from "./operators.ts";
import { otherAlarms } from "./other-alarms.ts";

/** How many sweeps each line of a table stands on. */
export interface Sweeps {
  readonly known: number;
  readonly unequal: number;
  readonly pooled: number;
  readonly other: number;
  readonly detection: number;
  readonly speed: number;
  readonly hidden: number;
  readonly hiddenBySpeed: number;
  readonly letGoAlarms: number;
  readonly letGo: number;
  readonly early: number;
}

/** As many as the tests have time for. */
export const USUAL: Sweeps = {
  known: 1000,
  unequal: 400,
  pooled: 600,
  other: 500,
  detection: 100,
  speed: 100,
  hidden: 60,
  hiddenBySpeed: 100,
  letGoAlarms: 200,
  letGo: 40,
  early: 60,
};

export interface Section {
  readonly title: string;
  readonly text: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export const SECTIONS: readonly ((sweeps: Sweeps) => Section)[] = [
  knownSection,
  unequalSection,
  pooledSection,
  otherSection,
  detectionSection,
  speedSection,
  upAndDownSection,
  hiddenSection,
  shownByBothSection,
  hiddenBySpeedSection,
  letGoAlarmSection,
  letGoSection,
  earlySection,
  operatorSection,
];

/** The whole page. */
export function resultsPage(sections: readonly Section[]): string {
  return [
    "# What the simulator says of the findings",
    "",
    "A simulated port with two states of flow stands on a simulated bench (`test/kit/simulator`); what its operator reads is",
    "written as a record and judged by the real service. The tests compute these tables and compare them with this page",
    "(`UPDATE=1 npx vitest run test/simulation` writes it anew); `npm run simulate -- 10` prints them from ten times as many",
    "sweeps. Every rate stands with its exact two-sided 95 % interval (Clopper and Pearson): `93 % (87 to 96)`.",
    "",
    ...sections.flatMap(({ title, text, head, rows }) => [
      `## ${title}`,
      "",
      text,
      "",
      `| ${head.join(" | ")} |`,
      `|${head.map(() => " ---: ").join("|")}|`,
      ...rows.map((row) => `| ${row.join(" | ")} |`),
      "",
    ]),
  ].join("\n");
}

function knownSection({ known }: Sweeps): Section {
  const alarms = knownAlarms(known);
  const hits = alarms.reduce((sum, { rate }) => sum + rate.hits, 0);
  return {
    title: "False alarms of a fall-back, repeatability known",
    text: `A flat port, ${known} sweeps a line: the least favourable case, since a curve that rises drops less. Promised: 5 % of sweeps. All lines together: ${percent(hits / (known * alarms.length))}.`,
    head: ["stations", "said to fall back", "95 % interval"],
    rows: alarms.map(({ what, rate }) => [what, ...rateCells(rate)]),
  };
}

function unequalSection({ unequal }: Sweeps): Section {
  return {
    title: "The same with stations that are read unequally often",
    text: `${unequal} sweeps a line. The limit is made for equal numbers of readings; with unequal ones it errs, if at all, on the quiet side.`,
    head: ["stations", "said to fall back", "95 % interval"],
    rows: unequalAlarms(unequal).map(({ what, rate }) => [what, ...rateCells(rate)]),
  };
}

function pooledSection({ pooled }: Sweeps): Section {
  return {
    title: "False alarms of a fall-back, repeatability pooled from the sweep itself",
    text: `${pooled} sweeps a line. Promised: 5 %. The last two columns are what the same sweeps would have come to with the normal limit widened by t/z, which is made for one difference only.`,
    head: [
      "stations",
      "readings each",
      "degrees of freedom",
      "said to fall back",
      "95 % interval",
      "by t/z",
      "95 % interval",
    ],
    rows: pooledAlarms(pooled).map(({ stations, readings, degreesOfFreedom, rate, shortcut }) => [
      String(stations),
      String(readings),
      String(degreesOfFreedom),
      ...rateCells(rate),
      ...rateCells(shortcut),
    ]),
  };
}

function otherSection({ other }: Sweeps): Section {
  return {
    title: "False alarms of the limits of single differences",
    text: `${other} runs a line on a flat port, repeatability known. Each limit is made for 5 % of the things that it looks at: a run in which it looks at ten lifts is marked somewhere in 40 % of the cases (1 - 0.95^10), so one marked lift among many is no news by itself.`,
    head: ["finding", "looks at", "runs marked", "95 % interval"],
    rows: otherAlarms(other).map(({ code, what, rate }) => [code, what, ...rateCells(rate)]),
  };
}

function detectionSection({ detection: sweeps }: Sweeps): Section {
  return {
    title: "Detection of a fall-back",
    text: `Target: none; this is what the limit costs. Share of ${sweeps} sweeps of eleven stations in which it was resolved, by its size. The bench is quick (time constant 0.3 s), the port flat from 0.450 in and lets go above 0.475 in.`,
    head: ["repeatability", "readings each", ...DROPS.map((drop) => `drop ${percent(drop)}`)],
    rows: detection(sweeps).map(({ noise, repeats, rates }) => [
      percent(noise, 2),
      String(repeats),
      ...rates.map(rateCell),
    ]),
  };
}

function speedSection({ speed }: Sweeps): Section {
  return {
    title: "What the bench's speed does to it",
    text: `${speed} sweeps a line, repeatability 0.35 %, one reading a station, \`quick ${QUICK} s\`. The unstable port lets go by 3 % where its depression rises faster than 6 inH2O/s at 50 m/s in the throat, with 15 % of scatter from opening to opening. Where the bench is too slow to make it let go, its flat top is questioned; the stable port is left alone. Promised: a fall-back in 5 % of the sweeps of a flat port at most; a port that climbs gives fewer.`,
    head: [
      "time constant, s",
      "settles in, s",
      "unstable: fall-back",
      "unstable: flat-top",
      "unstable: nothing said",
      "stable: fall-back",
      "stable: flat-top",
    ],
    rows: bySpeed(speed).map((line) => [
      line.time.toFixed(1),
      line.settle.toFixed(1),
      ...[line.fallBack, line.flatTop, line.neither, line.stableFallBack, line.stableFlatTop].map(rateCell),
    ]),
  };
}

function upAndDownSection({ speed }: Sweeps): Section {
  return {
    title: "Up and down while the blower runs on",
    text: `${speed} sweeps a line of eleven lifts up and ten down. The flow lets go at 0.525 in and comes back only below 0.420 in, so that the lifts between have two flows. Promised: each lift by itself is marked by chance in 5 % of cases, so that one or more of nine are in 37 % of stable sweeps, which the finding says. Here more are: the scatter of the set lift (0.4 thousandths of an inch) is no part of the repeatability, and shows at low lifts.`,
    head: ["port", "repeatability", "direction-dependent", "fall-back"],
    rows: upAndDown(speed).map(({ port, noise, differs, fallBack }) => [
      port,
      percent(noise, 2),
      rateCell(differs),
      rateCell(fallBack),
    ]),
  };
}

const HIDDEN_TEXT = "the first bench is quick (time constant 0.3 s), stations and port are those above.";

function hiddenSection({ hidden }: Sweeps): Section {
  return {
    title: "A fall-back that the other bench hides: detection",
    text: `${hidden} pairs of sweeps a cell, \`hidden-fall-back\` on either bench; ${HIDDEN_TEXT} The second one is slow (3.2 s), and the port mostly stays attached there.`,
    head: hiddenHead(),
    rows: hiddenRows(hiddenDetection(hidden)),
  };
}

function shownByBothSection({ hidden }: Sweeps): Section {
  return {
    title: "A fall-back that both benches show: false alarms",
    text: `${hidden} pairs of sweeps a cell; ${HIDDEN_TEXT} The second one is as quick, so that nothing is hidden, though one bench may resolve what the other does not. Target: 5 % of pairs at most.`,
    head: hiddenHead(),
    rows: hiddenRows(shownByBoth(hidden)),
  };
}

function hiddenHead(): readonly string[] {
  return ["repeatability", "readings each", ...HIDDEN_DROPS.map((drop) => `drop ${percent(drop)}`)];
}

function hiddenRows(lines: ReturnType<typeof hiddenDetection>): Section["rows"] {
  return lines.map(({ noise, repeats, rates }) => [
    percent(noise, 2),
    String(repeats),
    ...rates.map(rateCell),
  ]);
}

function hiddenBySpeedSection({ hiddenBySpeed: pairs }: Sweeps): Section {
  return {
    title: "The same by the other bench's speed",
    text: `${pairs} pairs of sweeps a cell, repeatability 0.35 %, one reading a station, a port that lets go by 3 %; ${HIDDEN_TEXT} Target for the stable port: 5 % at most.`,
    head: ["time constant of the other, s", "unstable: hidden-fall-back", "stable: hidden-fall-back"],
    rows: hiddenBySpeed(pairs).map(({ time, unstable, stable }) => [
      time.toFixed(1),
      rateCell(unstable),
      rateCell(stable),
    ]),
  };
}

function letGoAlarmSection({ letGoAlarms: traces }: Sweeps): Section {
  return {
    title: "Letting go in a trace: false alarms",
    text: `${traces} traces a cell of the stable port, six seconds long, on a bench of 0.8 s. A sample of flow has 0.3 % of noise, of which neighbours share what the head of a column says; the depression has 0.04 inH2O of its own. The samples go to the test of the rules \`let-go\` and \`re-attached\` without a record around them. Counted is any step, down or up. Target: 5 % of traces at most.`,
    head: ["samples", ...CORRELATIONS.map((correlation) => `shared ${correlation}`)],
    rows: letGoAlarms(traces).map(({ samples, rates }) => [String(samples), ...rates.map(rateCell)]),
  };
}

function letGoSection({ letGo }: Sweeps): Section {
  return {
    title: "Letting go in a trace: detection",
    text: `${letGo} traces a cell, six seconds long, neighbours share 0.3 of the noise of flow. The port lets go on its way up, at 50 m/s in the throat, which is at some 60 % of the target. A bench that is quicker than its logger passes that in a few samples and shows no step; its sweep shows the fall-back itself.`,
    head: ["bench, s", "samples", "noise of flow", ...STEPS.map((step) => `step ${percent(step)}`)],
    rows: letGoDetection(letGo).map(({ time, samples, noise, rates }) => [
      time.toFixed(1),
      String(samples),
      percent(noise),
      ...rates.map(rateCell),
    ]),
  };
}

function earlySection({ early }: Sweeps): Section {
  return {
    title: "Readings that were taken early",
    text: `${early} readings a line, each with a trace of the same approach: a bench of 0.8 s, a hundred samples in eight seconds, 0.35 % of noise in a sample of flow. Said to be early: \`read-early\`, of which every reading before the settled stretch is one; behind it 5 % at most is the target. Said to be beyond mending: that the correction for the depression cannot be trusted; 5 % at most where nothing is wrong.`,
    head: ["what is wrong", "read", "said to be early", "said to be beyond mending"],
    rows: earlyReadings(early).map(({ what, moment, early: said, useless }) => [
      what,
      moment,
      rateCell(said),
      rateCell(useless),
    ]),
  };
}

function operatorSection(): Section {
  return {
    title: "What reading at once costs",
    text: "Mean error of corrected flow over eleven stations of the stable port, without noise, for displays of flow that lag behind the depression by a time constant of their own. Correcting to the target mends the depression; it cannot mend a flow that does not belong to it.",
    head: ["operator", "bench, s", "display, s", "error"],
    rows: byOperator().map(({ operator, time, lag, error }) => [
      operator,
      time.toFixed(1),
      lag.toFixed(2),
      percent(error, 2),
    ]),
  };
}

function rateCells({ hits, trials, low, high }: Rate): readonly string[] {
  return [percent(hits / trials), `${percent(low)} to ${percent(high)}`];
}

/** A rate and its interval in one cell. */
function rateCell({ hits, trials, low, high }: Rate): string {
  return `${percent(hits / trials, 0)} (${(100 * low).toFixed(0)} to ${(100 * high).toFixed(0)})`;
}

function percent(share: number, decimals = 1): string {
  return `${(100 * share).toFixed(decimals).replace(/^-(0(?:\.0+)?)$/, "$1")} %`;
}
