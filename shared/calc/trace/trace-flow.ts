// The corrected flow of a trace's samples, sample by sample through the bench's own chain, and the area it stands for.
import type { Row } from "../../model/model.ts";
import type { Setup } from "../../model/setup.ts";
import type { TraceSamples } from "../../model/trace-result.ts";
import { columnValues, columnWords } from "../column-values.ts";
import { type ChainInput, flowChain, leakNumber } from "../flow-chain.ts";
import { findMeter } from "../meters/index.ts";

/** Which of a trace's columns holds the display's number; a bench that is not known shows flow. */
export function displayColumn({ bench }: Setup): string {
  return (bench?.shows && findMeter(bench.shows.kind)?.column) ?? "flow";
}

/**
 * Corrected flow of every sample, m3/s, NaN where there is none. `isFlow` says that the numbers are a volume flow of the
 * room's air although the bench shows something else, as a log may hold it. A trace names no range: it is the one of the
 * run's reading at that lift. `undefined` where the trace knows no flow, or the bench cannot tell what it means.
 */
export function traceFlow(
  setup: Setup,
  lift: number | undefined,
  { depression, display }: TraceSamples,
  isFlow: boolean,
): Float64Array | undefined {
  if (display === undefined) return undefined;
  const correct = isFlow ? plainFlow(setup) : chained(setup, lift);
  if (correct === undefined) return undefined;
  const flows = new Float64Array(depression.length);
  for (let i = 0; i < flows.length; i++) {
    const flow = correct(display[i] ?? Number.NaN, depression[i] ?? Number.NaN);
    flows[i] = Number.isFinite(flow) ? flow : Number.NaN;
  }
  return flows;
}

type Correct = (display: number, depression: number) => number;

function chained(setup: Setup, lift: number | undefined): Correct | undefined {
  const chain = flowChain(setup);
  if (chain === undefined) return undefined;
  const input: ChainInput = {
    display: 0,
    depression: 0,
    leak: leakNumber(setup),
    density: setup.air.value.density,
    range: rangeAt(setup, lift),
  };
  return (display, depression) => {
    input.display = display;
    input.depression = depression;
    return chain.through(input);
  };
}

/** By the square root law and to the reference air; what leaks at the bench is in it. */
function plainFlow({ quote, air, reference }: Setup): Correct {
  const thinning = reference === undefined ? 1 : Math.sqrt(air.value.density / reference.value.state.density);
  return (flow, depression) =>
    depression > 0 ? flow * thinning * Math.sqrt(quote.value.value / depression) : Number.NaN;
}

function rangeAt(setup: Setup, lift: number | undefined): string | undefined {
  const row = rowsAtLift(setup, lift).at(-1);
  return row && columnWords(setup.run.table, "range")?.(row);
}

/** The readings of the run at a lift, without void ones. */
export function rowsAtLift({ run }: Setup, lift: number | undefined): readonly Row[] {
  const lifts = columnValues(run.table, "lift");
  return (run.table?.rows ?? []).filter((row) => row.void === undefined && isLift(lifts?.value(row), lift));
}

/** Whether two lifts are the same to a hundredth of a millimetre. */
export function isLift(a: number | undefined, b: number | undefined): boolean {
  return a !== undefined && b !== undefined && Math.abs(a - b) < 1e-5;
}

/**
 * m2 of apparent area a m3/s of corrected flow: the area through which air of the density that the flow is corrected to
 * would pass it at the quoted depression without loss, Q / sqrt(2 dp / rho) (Bernoulli at constant density). For one trace
 * it goes with flow/sqrt(depression).
 */
export function areaFactor({ quote, air, reference }: Setup): number {
  const density = reference?.value.state.density ?? air.value.density;
  return Math.sqrt(density / (2 * quote.value.value));
}
