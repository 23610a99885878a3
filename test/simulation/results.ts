// Sets the tables of all simulations as one Markdown page.
import type { Rate } from "../kit/binomial.ts";
import { bySpeed, DROPS, detection, QUICK } from "./detection.ts";
import { knownAlarms, pooledAlarms, unequalAlarms } from "./false-alarms.ts";
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
}

/** As many as the tests have time for. */
export const USUAL: Sweeps = {
  known: 1000,
  unequal: 400,
  pooled: 600,
  other: 500,
  detection: 25,
  speed: 50,
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
    "sweeps. Rates stand with their exact two-sided 95 % interval (Clopper and Pearson).",
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
    text: `Share of ${sweeps} sweeps of eleven stations in which it was resolved, by its size. The bench is quick (time constant 0.3 s), the port flat from 0.450 in and lets go above 0.475 in.`,
    head: ["repeatability", "readings each", ...DROPS.map((drop) => `drop ${percent(drop)}`)],
    rows: detection(sweeps).map(({ noise, repeats, shares }) => [
      percent(noise),
      String(repeats),
      ...shares.map((share) => percent(share, 0)),
    ]),
  };
}

function speedSection({ speed }: Sweeps): Section {
  return {
    title: "What the bench's speed does to it",
    text: `${speed} sweeps a line, repeatability 0.35 %, one reading a station, \`quick ${QUICK} s\`. The unstable port lets go by 3 % where its depression rises faster than 6 inH2O/s at 50 m/s in the throat, with 15 % of scatter from opening to opening. Where the bench is too slow to make it let go, its flat top is questioned; the stable port is left alone.`,
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
      ...[line.fallBack, line.flatTop, line.neither, line.stableFallBack, line.stableFlatTop].map((share) =>
        percent(share, 0),
      ),
    ]),
  };
}

function upAndDownSection({ speed }: Sweeps): Section {
  return {
    title: "Up and down while the blower runs on",
    text: `${speed} sweeps a line of eleven lifts up and ten down. The flow lets go at 0.525 in and comes back only below 0.420 in, so that the lifts between have two flows.`,
    head: ["port", "repeatability", "direction-dependent", "fall-back"],
    rows: upAndDown(speed).map(({ port, noise, differs, fallBack }) => [
      port,
      percent(noise, 2),
      percent(differs, 0),
      percent(fallBack, 0),
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

function percent(share: number, decimals = 1): string {
  return `${(100 * share).toFixed(decimals).replace(/^-(0(?:\.0+)?)$/, "$1")} %`;
}
