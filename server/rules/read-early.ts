// A reading that was taken while the bench was still on its way.
import { type ColumnValues, columnValues } from "../../shared/calc/column-values.ts";
import { type EarlyReading, readingAt, timeOfDepression } from "../../shared/calc/trace/early-reading.ts";
import { isLift } from "../../shared/calc/trace/trace-flow.ts";
import type { Row } from "../../shared/model/model.ts";
import type { Setup } from "../../shared/model/setup.ts";
import { unit } from "../../shared/render/display-units.ts";
import type { ComputedTrace } from "../analysis/traces.ts";
import { BARE_SESSION } from "./examples.ts";
import { cellSpan, rowSpan } from "./places.ts";
import { type Report, rule } from "./rule.ts";
import { depressionWords, timeWords } from "./trace-words.ts";
import { inUnit, percent } from "./words.ts";

type Args = { when: string; found: string; remedy: string };

/** Off by more standard uncertainties than this, a reading is not what the settled bench gives. */
const TRUSTED = 2;

export const readEarly = rule<Args>({
  code: "read-early",
  severity: "warning",
  message: ({ when, found }) => `read ${when}: ${found}`,
  help: ({ remedy }) => remedy,
  what: "A reading was taken before the depression had settled: earlier than the row's own settle time, earlier than the trace of its lift shows, or below the band.",
  why: "While the bench moves, flow and depression do not belong together. The square root mends the depression, and nothing else.",
  bad: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]  read[s]
     0.300               27.8      150.0        1.6      1.2
`,
  good: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]  read[s]
     0.300               28.0      150.5        1.6      4.0
`,
  checkRun({ setup }, report, _limits, traces) {
    const read = columnValues(setup.run.table, "read");
    if (read !== undefined || traces.length > 0) checkRows(setup, read, traces, report);
  },
});

function checkRows(
  setup: Setup,
  read: ColumnValues | undefined,
  traces: readonly ComputedTrace[],
  report: Report<Args>,
): void {
  const { table } = setup.run;
  const [lift, settle, depression] = ["lift", "settle", "depression"].map((name) =>
    columnValues(table, name),
  );
  for (const row of table?.rows ?? []) {
    if (row.void !== undefined) continue;
    const reading = {
      row,
      read: read?.value(row),
      settle: settle?.value(row),
      depression: depression?.value(row),
    };
    const trace = traces.find(({ placed }) => isLift(placed.entity.lift?.value, lift?.value(row)));
    const args = (trace && byTrace(setup, trace, reading)) ?? byTimes(setup, reading);
    if (args === undefined) continue;
    report(reading.read === undefined ? rowSpan(row) : cellSpan(setup.run, row, "read"), args);
  }
}

interface Reading {
  readonly row: Row;
  /** s; SI all. */
  readonly read: number | undefined;
  readonly settle: number | undefined;
  readonly depression: number | undefined;
}

/** As the row's own times say. */
function byTimes(setup: Setup, { read, settle, depression }: Reading): Args | undefined {
  if (read === undefined || settle === undefined || !(read < settle * (1 - 1e-9))) return undefined;
  const seconds = setup.run.table?.columns.find(({ name }) => name === "read")?.unit ?? unit("s");
  const target = setup.target.value;
  const short = depression === undefined ? undefined : 1 - Math.sqrt(depression / target.value);
  const held = `${inUnit(settle - read, seconds)} before the depression held`;
  return {
    when: `after ${inUnit(read, seconds)}, ${held}`,
    found:
      short === undefined || Math.abs(short) < 5e-5
        ? "flow and depression may not belong together yet"
        : `${percent(Math.abs(short))} ${short > 0 ? "less" : "more"} flow than at ${target.text} ${target.unit.symbol}, and the correction for that cannot be trusted`,
    remedy: "wait until the depression holds; take a trace to see what an early reading costs here",
  };
}

/** As the trace of its lift shows: what stood there at that time, or at that depression, and what stands there once settled. */
function byTrace(setup: Setup, { result }: ComputedTrace, { read, depression }: Reading) {
  const { settling, steady } = result;
  const { target, within } = setup;
  const held = steady?.from ?? settling?.time;
  if (held === undefined) return undefined;
  const below = depression !== undefined && depression < target.value.value - within.value * (1 + 1e-9);
  const time = read ?? (below ? timeOfDepression(result, depression) : undefined);
  if (time === undefined || !(time < held * (1 - 1e-9))) return undefined;
  const early = readingAt(result, time);
  const when =
    read === undefined
      ? `at ${depressionWords(result, depression ?? 0)}, which the trace of this lift passes ${timeWords(result, held - time)} before it is steady`
      : `after ${timeWords(result, read)}, ${timeWords(result, held - read)} before the trace of this lift is steady`;
  return { when, ...verdict(early) };
}

function verdict(early: EarlyReading | undefined): Omit<Args, "when"> {
  const wait = "wait until the depression holds";
  if (early === undefined) return { found: "the trace has no steady flow to hold it against", remedy: wait };
  const { off, error } = early;
  const size = percent(Math.abs(off));
  return Math.abs(off) <= TRUSTED * error
    ? {
        found: `corrected for the depression it stands ${size} off the steady flow, no more than the trace scatters, and can be used`,
        remedy: `${wait}, all the same`,
      }
    : {
        found: `corrected for the depression it still stands ${size} ${off > 0 ? "above" : "below"} the steady flow, and no correction mends that`,
        remedy: `${wait}, and read again`,
      };
}
