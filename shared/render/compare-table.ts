// One run laid over its baseline as heads, cells and sentences, before anything is said about how they are set on a page.
import type { Mismatch } from "../calc/comparable.ts";
import { type ComparedLift, type ComparedMean, type Comparison, compareRuns } from "../calc/comparison.ts";
import type { CurveAt } from "../calc/curve-at.ts";
import { isSameLift } from "../calc/gain.ts";
import { isSamePortOnTwoBenches, type TwoBenches, twoBenches } from "../calc/two-benches.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { benchFacts } from "./compare-benches.ts";
import type { CompareInput, CompareRun } from "./compare-input.ts";
import { type DisplayUnits, displayUnits } from "./display-units.ts";
import { mismatchWords } from "./mismatch-words.ts";
import { correctedFlowHead, type Fact } from "./run-facts.ts";
import type { TableColumn } from "./run-table.ts";
import { shownDecimals } from "./shown-number.ts";
import { liftText, overLift } from "./station-words.ts";

const NOTHING = "-";
/** In front of a flow that lies between two readings. */
const BETWEEN = "~";

/** A run over its baseline with everything that is said of the two. */
export interface Compared {
  readonly run: CompareRun;
  readonly comparison: Comparison;
  /** Whether gains are told: the two were read alike, or it was asked for anyway. */
  readonly isTold: boolean;
  /** Where both are of one port and stage on two benches. */
  readonly benches: TwoBenches | undefined;
}

export interface CompareTable {
  readonly title: string;
  readonly facts: readonly Fact[];
  readonly head: string;
  readonly columns: readonly TableColumn[];
  readonly notes: readonly string[];
  readonly summary: readonly Fact[];
}

/** Every run over the baseline. */
export function comparedRuns({ baseline, others, anyway }: CompareInput): readonly Compared[] {
  return others.map((run) => {
    const comparison = compareRuns(run.result, baseline.result);
    const isBenches = isSamePortOnTwoBenches(baseline.result.setup, run.result.setup);
    return {
      run,
      comparison,
      isTold: anyway || comparison.mismatches.length === 0,
      benches: isBenches ? twoBenches(baseline.result, run.result) : undefined,
    };
  });
}

/**
 * Whether two runs differ: they were not read alike; or the mean, or that of a third of the lifts, differs by more than
 * chance (a single lift where no stretch is shared); or two benches disagree at a lift, or one hides what the other shows.
 */
export function differs({ comparison, benches }: Compared): boolean {
  const { mismatches, mean, bands, lifts } = comparison;
  if (mismatches.length > 0) return true;
  const isResolved =
    mean === undefined
      ? lifts.some(({ gained }) => gained?.isResolved)
      : [mean, ...bands].some((part) => part.isResolved);
  if (benches === undefined) return isResolved;
  return benches.hidden.length > 0 || benches.lifts.some(({ en }) => en !== undefined && Math.abs(en) > 1);
}

/** The table of one run over the baseline, in the baseline's units. */
export function compareTable(baseline: CompareRun, compared: Compared): CompareTable {
  const { run, comparison, isTold, benches } = compared;
  const units = displayUnits(baseline.result.setup);
  const { lifts, mismatches } = comparison;
  const isDrawn = lifts.some(({ own, baseline: base }) => own?.isRead === false || base?.isRead === false);
  const isTwoWay = lifts.some(({ branch }) => branch === "falling");
  const decimals = flowDecimals(baseline, run, units.flow);
  const flowCell = (flow: CurveAt | undefined) =>
    flow === undefined
      ? NOTHING
      : `${flow.isRead ? "" : BETWEEN}${formatFixed(fromSI(flow.flow, units.flow), decimals)}`;
  const column = (title: string, unit: string, cell: (lift: ComparedLift) => string, isNumber = true) => ({
    title,
    unit,
    isNumber,
    cells: lifts.map(cell),
  });
  const onBenches = ({ lift, branch }: ComparedLift) =>
    branch === "rising" ? benches?.lifts.find((other) => isSameLift(other.lift, lift)) : undefined;
  const all: readonly (TableColumn | false)[] = [
    column("lift", units.lift.symbol, ({ lift }) => liftText(lift, units.lift)),
    isTwoWay && column("branch", "", ({ branch }) => branch, false),
    column(baseline.label, units.flow.symbol, (lift) => flowCell(lift.baseline)),
    column(run.label, units.flow.symbol, (lift) => flowCell(lift.own)),
    isTold &&
      column("difference", units.flow.symbol, ({ own, baseline: base }) =>
        own === undefined || base === undefined
          ? NOTHING
          : signedFixed(fromSI(own.flow, units.flow) - fromSI(base.flow, units.flow), decimals),
      ),
    isTold &&
      column("gain", "%", ({ gained }) =>
        gained === undefined ? NOTHING : signedFixed(100 * gained.gain, 1),
      ),
    isTold &&
      column("chance", "%", ({ gained }) =>
        gained === undefined ? NOTHING : `±${formatFixed(100 * gained.noise, 1)}`,
      ),
    benches !== undefined &&
      column("En", "", (lift) => {
        const en = onBenches(lift)?.en;
        return en === undefined ? NOTHING : signedFixed(en, 2);
      }),
    benches !== undefined &&
      column("left over", "%", (lift) => {
        const { residual } = onBenches(lift) ?? {};
        return residual === undefined ? NOTHING : signedFixed(100 * residual, 1);
      }),
    column("remarks", "", (lift) => remark(lift, compared, baseline), false),
  ];
  const columns = all.filter((entry): entry is TableColumn => entry !== false);
  const hasRemarks = columns.at(-1)?.cells.some((cell) => cell !== "");
  return {
    title: `${run.label} over ${baseline.label}`,
    facts: [runFact(baseline), runFact(run)],
    head: `${correctedFlowHead(baseline.result.setup)}${isDrawn ? `; ${BETWEEN} lies between two readings` : ""}`,
    columns: lifts.length === 0 ? [] : hasRemarks ? columns : columns.slice(0, -1),
    notes: [...mismatchNotes(mismatches, isTold), ...sameNotes(comparison, run)],
    summary: [
      ...(isTold ? meanFacts(comparison, units, decimals) : []),
      ...(benches === undefined ? [] : benchFacts(baseline, run, benches)),
    ],
  };
}

function remark(
  { own, baseline: base, gained }: ComparedLift,
  { run, isTold }: Compared,
  baseline: CompareRun,
) {
  if (own === undefined) return `only ${baseline.label}`;
  if (base === undefined) return `only ${run.label}`;
  return isTold && gained !== undefined && gained.noise > 0 && !gained.isResolved ? "within chance" : "";
}

function runFact({ label, file, revision, result: { setup } }: CompareRun): Fact {
  const { run, bench, date, port } = setup;
  const words = [
    revision === undefined ? file : `${file} at ${revision}`,
    ...(port === undefined ? [] : [port.id]),
    ...(run.cylinder === undefined ? [] : [`cylinder ${run.cylinder}`]),
    ...(run.stage === undefined ? [] : [run.stage]),
    ...(bench === undefined ? [] : [`bench ${bench.id}`]),
    ...(date === undefined ? [] : [date.value]),
  ];
  return { label, words: words.join(", ") };
}

function mismatchNotes(mismatches: readonly Mismatch[], isTold: boolean): readonly string[] {
  if (mismatches.length === 0) return [];
  const means = isTold ? "the gains are not the port's alone" : "no gain is told; --anyway tells it";
  return [`not comparable: ${mismatchWords(mismatches)}; ${means}`];
}

/** Chance speaks of two measurements. */
function sameNotes({ sameReadings }: Comparison, { result }: CompareRun): readonly string[] {
  if (sameReadings === 0) return [];
  const all = [...result.rising, ...result.falling].reduce((sum, { rows }) => sum + rows.length, 0);
  const which = sameReadings === all ? "all readings" : `${sameReadings} of ${all} readings`;
  return [
    `${which} are the same in both, taken once: what differs there is what was written about them, not chance`,
  ];
}

function meanFacts({ mean, bands }: Comparison, units: DisplayUnits, decimals: number): readonly Fact[] {
  if (mean === undefined) return [];
  const flow = (value: number) => formatFixed(fromSI(value, units.flow), decimals);
  const words = (part: ComparedMean) =>
    `${flow(part.baseline)} \u2192 ${flow(part.own)} ${units.flow.symbol}, ${signedFixed(100 * part.gain, 1)} % ${chanceWords(part)}`;
  const names = ["low third", "middle third", "high third"];
  return [
    { label: "mean", words: `${words(mean)} ${overLift(mean, units.lift)}` },
    ...bands.map((band, index) => ({ label: names[index] ?? "", words: words(band) })),
  ];
}

function chanceWords({ noise, isResolved }: ComparedMean): string {
  if (noise === 0) return "(the same readings)";
  return `(chance ±${formatFixed(100 * noise, 1)} %${isResolved ? "" : ": not resolved"})`;
}

/** With a sign, but for nothing at all. */
export function signedFixed(value: number, decimals: number): string {
  const text = formatFixed(value, decimals);
  return Number(text) > 0 ? `+${text}` : text;
}

/** All flows with the decimals that the highest station deserves. */
function flowDecimals(baseline: CompareRun, run: CompareRun, unit: Unit): number {
  const all = [baseline, run].flatMap(({ result }) => [...result.rising, ...result.falling]);
  const [first] = all;
  if (first === undefined) return 0;
  const peak = all.reduce((highest, station) => (station.flow > highest.flow ? station : highest), first);
  return Math.max(1, shownDecimals(fromSI(peak.flow, unit), peak.uncertainty));
}
