// A bench's history as titles, sentences and columns, before anything is said about how they are set on a page.
import type { BenchReport } from "../calc/bench/bench-report.ts";
import type { LeakHistory } from "../calc/bench/leak-history.ts";
import type { PlateHistory, PlatePoint } from "../calc/bench/plate-history.ts";
import type { SettleClass } from "../calc/bench/settle-classes.ts";
import type { SweepTime } from "../calc/bench/sweep-times.ts";
import { dayOf } from "../calc/calendar.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import { freedomWords, repeatWords, secondsWords, shareWords } from "./bench-lines.ts";
import type { BenchUnits } from "./bench-units.ts";
import { displayUnits } from "./display-units.ts";
import { quantityWords } from "./run-facts.ts";
import type { TableColumn } from "./run-table.ts";
import { shownNumber, shownUncertainty } from "./shown-number.ts";

export interface BenchSection {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly tables: readonly (readonly TableColumn[])[];
}

const NOTHING = "-";
/** With fewer checks the limits themselves are hardly known (common practice, no published source). */
const FEW_CHECKS = 8;

/** The sections of one bench in the order in which a reader asks for them; what is not there is said. */
export function benchSections(report: BenchReport, units: BenchUnits): readonly BenchSection[] {
  return [
    settleSection(report, units),
    sweepSection(report.sweeps),
    repeatSection(report),
    daysSection(report),
    ...plateSections(report.plates),
    leakSection(report.leak, units),
    dutySection(report, units),
  ];
}

function settleSection({ settle, bench }: BenchReport, units: BenchUnits): BenchSection {
  const title = "time to settle";
  if (settle === undefined) return section(title, ["no settle times in these records"]);
  const stated = [
    ...(bench.settle === undefined ? [] : [`settle ${quantityWords(bench.settle)}`]),
    ...(bench.quick === undefined ? [] : [`quick ${quantityWords(bench.quick)}`]),
  ];
  const words = `median ${secondsWords(settle.median)} of ${settle.count} timed readings, slowest ${secondsWords(settle.slowest)}`;
  return section(
    title,
    [stated.length === 0 ? words : `${words}; the block states ${stated.join(" and ")}`],
    [
      settleColumns("lift", units.lift, settle.byLift, liftDecimals(units.lift)),
      settleColumns("flow", units.flow, settle.byFlow, 0),
    ],
  );
}

function settleColumns(
  title: string,
  unit: Unit,
  classes: readonly SettleClass[],
  least: number,
): readonly TableColumn[] {
  return [
    column(title, unit.symbol, classes, (entry) => classWords(entry, classes, least)),
    column("readings", "", classes, ({ count }) => String(count)),
    column("median", "s", classes, ({ median }) => formatFixed(median, 1)),
    column("slowest", "s", classes, ({ slowest }) => formatFixed(slowest, 1)),
  ];
}

/** One value, or from where to where; alike in all lines of a table. */
function classWords(
  { from, to }: { readonly from: number; readonly to: number },
  all: readonly { readonly from: number; readonly to: number }[],
  least = 0,
): string {
  const decimals = all.reduce(
    (most, entry) => Math.max(most, decimalsOf(entry.from), decimalsOf(entry.to)),
    least,
  );
  const words = (value: number) => formatFixed(value, decimals);
  return from === to ? words(from) : `${words(from)} – ${words(to)}`;
}

/** Decimals that a lift is set with. */
function liftDecimals(unit: Unit): number {
  return unit.symbol === "in" ? 3 : 1;
}

function liftNumber(value: number, unit: Unit): string {
  return formatFixed(value, Math.max(liftDecimals(unit), decimalsOf(value)));
}

/** Decimals that show a value to a thousandth of itself and no more. */
function decimalsOf(value: number): number {
  for (let decimals = 0; decimals < 4; decimals++) {
    const scaled = value * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6 * Math.max(1, scaled)) return decimals;
  }
  return 3;
}

function sweepSection(sweeps: readonly SweepTime[]): BenchSection {
  const title = "time of a sweep";
  if (sweeps.length === 0) return section(title, ["no timed runs in these records"]);
  const [a, b] = sweeps;
  const both =
    a !== undefined && b !== undefined
      ? `an intake and an exhaust run together usually take ${secondsWords(a.median + b.median)} from opening to reading, without the time to set lifts`
      : `only ${a?.side ?? ""} runs were timed`;
  const share = (title: string, of: (sweep: SweepTime) => number | undefined) =>
    column(title, "%", sweeps, (sweep) => percentCell(of(sweep)));
  const columns = [
    column("side", "", sweeps, ({ side }) => side, false),
    column("runs", "", sweeps, ({ runs }) => String(runs)),
    column("rows", "", sweeps, ({ rows }) => formatFixed(rows, rows % 1 === 0 ? 0 : 1)),
    column("usual time", "s", sweeps, ({ median }) => formatFixed(median, 1)),
    column("longest time", "s", sweeps, ({ longest }) => formatFixed(longest, 1)),
    column("one row", "s", sweeps, ({ perRow }) => formatFixed(perRow, 1)),
    share("low lifts", ({ low }) => low),
    share("middle lifts", ({ middle }) => middle),
    share("high lifts", ({ high }) => high),
    share("again same lift", ({ repeats }) => repeats),
    share("void rows", ({ voids }) => voids),
    share("after settling", ({ waiting }) => waiting),
  ];
  return section(title, [both], [columns]);
}

function repeatSection({ within }: BenchReport): BenchSection {
  const title = "repeatability";
  if (within === undefined) return section(title, ["no point was read more than once in these records"]);
  const { deviation, degreesOfFreedom, low, high, claimed, verdict } = within;
  const found = `${shareWords(deviation)} is one standard deviation of one reading, pooled from ${repeatWords(within)} (${freedomWords(degreesOfFreedom)}; 95 % confidence ${shareWords(low)} to ${shareWords(high)})`;
  if (claimed === undefined || verdict === undefined) {
    return section(title, [found, "the block states no repeat"]);
  }
  const stated = `the block's repeat ${shareWords(claimed)}`;
  const verdicts = {
    kept: `${stated} lies within that`,
    "repeats-worse": `${stated} is less than these records bear out: state the larger one, or find what scatters`,
    "repeats-better": `${stated} is more than these records show: findings are more cautious than they need to be`,
  } as const;
  return section(title, [found, verdicts[verdict]]);
}

function daysSection({ between }: BenchReport): BenchSection {
  const title = "over days";
  if (between === undefined) {
    return section(title, ["no port was read again in the same stage on another day in these records"]);
  }
  const { deviation, between: part, levels, subjects, sessions, widest } = between;
  const { subject, range, lift, run } = widest;
  const unit = displayUnits(run.setup).lift;
  return section(title, [
    `${shareWords(deviation)} is one standard deviation of one reading on another day (reproducibility); ${shareWords(part)} of it comes on top of repeating`,
    `from ${levels} ${levels === 1 ? "lift" : "lifts"} of ${subjects} ${subjects === 1 ? "port" : "ports"} in ${sessions} sessions; furthest apart ${shareWords(range)}, ${subject} at ${liftNumber(fromSI(lift, unit), unit)} ${unit.symbol}`,
  ]);
}

function plateSections(plates: readonly PlateHistory[]): readonly BenchSection[] {
  if (plates.length === 0) return [section("check plates", ["no plate check in these records"])];
  return plates.map(({ plate, points, limits, drift }) => {
    const sentences = [
      limits === undefined
        ? "one check makes no history: control limits need two"
        : `mean ${signed(limits.centre)}, control limits ${signed(limits.low)} to ${signed(limits.high)} (mean ± 2.66 mean moving ranges)${points.length < FEW_CHECKS ? `; ${points.length} checks are few, ${FEW_CHECKS} make limits to rely on` : ""}`,
      ...outWords(points),
      drift === undefined
        ? "no drift can be told from fewer than three dated checks"
        : `drift ${signed(drift.perYear)} ± ${percentWords(drift.halfWidth)} a year (95 %): ${drift.isResolved ? "the bench moves; calibrate it, and look at what wears or fills with dust" : "not told from chance"}`,
    ];
    const columns = [
      column("date", "", points, ({ date }) => (date === undefined ? NOTHING : dayOf(date)), false),
      column("readings", "", points, ({ readings }) => String(readings)),
      column("difference", "%", points, ({ difference }) => formatFixed(100 * difference, 2)),
      column("±U", "%", points, ({ uncertainty }) =>
        uncertainty === undefined ? NOTHING : shownUncertainty(100 * uncertainty),
      ),
      column("En", "", points, ({ en }) => (en === undefined ? NOTHING : formatFixed(en, 2))),
      column("limits", "", points, ({ isOut }) => (isOut ? "outside" : limits ? "within" : NOTHING), false),
      column("record", "", points, ({ file }) => file, false),
    ];
    return section(`check plate ${plate}`, sentences, [columns]);
  });
}

function outWords(points: readonly PlatePoint[]): readonly string[] {
  const out = points.filter(({ isOut }) => isOut);
  if (out.length === 0) return [];
  const days = out.map(({ date, file }) => (date === undefined ? file : dayOf(date))).join(", ");
  return [
    `outside the limits: ${days}; what changed at the bench that day? Once it is known, void those readings: the limits then stand on the rest`,
  ];
}

function leakSection(leak: LeakHistory | undefined, units: BenchUnits): BenchSection {
  const title = "leak";
  if (leak === undefined) return section(title, ["no leak was read in these records"]);
  const flow = (value: number) => formatFixed(fromSI(value, units.flow), 2);
  const at = `${shownNumber(fromSI(leak.depression, units.depression), undefined).replace(/\.?0+$/, "")} ${units.depression.symbol}`;
  const sentence = `usually ${flow(leak.median)} ${units.flow.symbol} at ${at}, at most ${flow(leak.largest)} ${units.flow.symbol}: head, adapter and bench together`;
  return section(
    title,
    [sentence],
    [
      [
        column("date", "", leak.points, ({ date }) => (date === undefined ? NOTHING : dayOf(date)), false),
        column("port", "", leak.points, ({ port }) => port ?? NOTHING, false),
        column("leak", units.flow.symbol, leak.points, (point) => flow(point.flow)),
      ],
    ],
  );
}

function dutySection({ duty }: BenchReport, units: BenchUnits): BenchSection {
  const title = "motor duty";
  if (duty.length === 0) return section(title, ["no motor duty in these records"]);
  const hardest = duty.reduce((most, entry) => (entry.highest > most.highest ? entry : most));
  return section(
    title,
    [`at most ${percentWords(hardest.highest)}, at ${classWords(hardest, duty)} ${units.flow.symbol}`],
    [
      [
        column("flow", units.flow.symbol, duty, (entry) => classWords(entry, duty)),
        column("readings", "", duty, ({ count }) => String(count)),
        column("usual", "%", duty, ({ median }) => formatFixed(100 * median, 0)),
        column("highest", "%", duty, (entry) => formatFixed(100 * entry.highest, 0)),
      ],
    ],
  );
}

function section(
  title: string,
  sentences: readonly string[],
  tables: readonly (readonly TableColumn[])[] = [],
): BenchSection {
  return { title, sentences, tables: tables.filter((columns) => (columns[0]?.cells.length ?? 0) > 0) };
}

function column<T>(
  title: string,
  unit: string,
  entries: readonly T[],
  cell: (entry: T) => string,
  isNumber = true,
): TableColumn {
  return { title, unit, isNumber, cells: entries.map(cell) };
}

function percentCell(share: number | undefined): string {
  return share === undefined ? NOTHING : formatFixed(100 * share, 0);
}

function percentWords(share: number): string {
  return `${formatFixed(100 * share, Math.abs(share) < 0.1 ? 2 : 0)} %`;
}

function signed(share: number): string {
  return `${share > 0 ? "+" : ""}${percentWords(share)}`;
}
