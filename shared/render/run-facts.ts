// Says in words what a run's numbers stand on, and what was assumed because nobody stated it.
import type { Reference, StatedAir } from "../model/model.ts";
import type { RunResult } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { formatFixed } from "../quantity/digits.ts";
import type { Quantity } from "../quantity/quantity.ts";
import { quantityIn, type WantedUnits } from "./wanted-units.ts";

export interface Fact {
  readonly label: string;
  readonly words: string;
}

const DENSITY_DECIMALS = 4;

/**
 * The facts of a run in the order in which a reader asks for them. The words hold the record's texts as written, and its
 * quantities too, but for those of the test in the units that are asked for; the air of the day stays as it was read.
 */
export function runFacts(result: RunResult, wanted: WantedUnits = []): readonly Fact[] {
  return factParts(result, wanted).map(({ label, parts }) => ({ label, words: parts.join(", ") }));
}

/** A fact, taken apart into what can be told for itself. */
export interface FactParts {
  readonly label: string;
  readonly parts: readonly string[];
}

/** The same facts in their parts; those without any are missing. */
export function factParts(result: RunResult, wanted: WantedUnits = []): readonly FactParts[] {
  const { setup } = result;
  const { run, session, port, date, target } = setup;
  const cylinder = run.cylinder === undefined ? [] : [`cylinder ${run.cylinder}`];
  const facts: (readonly [string, readonly string[]])[] = [
    [
      "port",
      [
        port?.id ?? missingWords(run.port ?? session?.port),
        ...(port?.side ? [port.side] : []),
        ...cylinder,
        setup.direction.value,
      ],
    ],
    ["stage", run.stage === undefined ? [] : [run.stage]],
    ["date", date === undefined ? [] : [date.value]],
    ["bench", benchWords(result)],
    ["target", [quantityIn(target.value, wanted)]],
    ["air", [...airWords(setup), `${formatFixed(setup.air.value.density, DENSITY_DECIMALS)} kg/m3`]],
    ["leak", [leakWords(setup, wanted)]],
    ["mounting", mountingWords(setup, wanted)],
    ["assumed", assumptions(result, wanted)],
  ];
  return facts.flatMap(([label, parts]) => (parts.length === 0 ? [] : [{ label, parts }]));
}

/** The head over corrected flow: at which depression, and in which air. */
export function correctedFlowHead({ quote, reference }: Setup, wanted: WantedUnits = []): string {
  const air = reference === undefined ? "air of the day" : `in ${reference.value.name}`;
  return `corrected flow at ${quantityIn(quote.value, wanted)}, ${air}`;
}

/** A quantity as it was written. */
export function quantityWords({ text, unit }: Quantity): string {
  return `${text} ${unit.symbol}`;
}

/** What is named but not there is not the same as what nobody names. */
function missingWords(reference: Reference | undefined): string {
  return reference === undefined ? "not stated" : `${reference.id} not found`;
}

function benchWords({ setup: { run, session, bench }, repeatability }: RunResult): readonly string[] {
  if (bench === undefined) return [missingWords(run.bench ?? session?.bench)];
  const { deviation, source } = repeatability;
  if (source === "default") return [bench.id];
  const share = `repeats to ${shareWords(deviation)}`;
  return [bench.id, source === "pooled" ? `${share} (pooled from repeated points)` : share];
}

function shareWords(share: number): string {
  return `${Number((100 * share).toPrecision(2))} %`;
}

function airWords({ air, statedAir }: Setup): readonly string[] {
  if (air.source === "default" || statedAir === undefined) return ["isa"];
  return statedAirWords(statedAir.value);
}

function statedAirWords(air: StatedAir): readonly string[] {
  const named: (readonly [string, Quantity | undefined])[] = [
    ["", air.temperature],
    ["", air.pressure],
    ["altimeter ", air.altimeter],
    ["elevation ", air.elevation],
    ["", air.humidity],
    ["dew-point ", air.dewPoint],
    ["wet-bulb ", air.wetBulb],
  ];
  return named.flatMap(([name, value]) => (value === undefined ? [] : [name + quantityWords(value)]));
}

function leakWords({ leak }: Setup, wanted: WantedUnits): string {
  if (leak === undefined) return "not stated";
  if (leak.value === "none") return "none";
  const { flow, depression, exponent } = leak.value;
  const law = exponent === undefined ? "" : ` exponent ${exponent}`;
  return `${quantityIn(flow, wanted)} at ${quantityIn(depression, wanted)}${law}`;
}

/** An entry matters where air goes in, a stub where it comes out; what was stated is told of any port. */
function mountingWords({ port, entry, stub, adapter }: Setup, wanted: WantedUnits): readonly string[] {
  return [
    ...(entry === undefined && port?.side === "exhaust" ? [] : [`entry ${entry?.value ?? "not stated"}`]),
    ...(stub === undefined && port?.side === "intake" ? [] : [`stub ${stubWords(stub, wanted)}`]),
    ...(adapter === undefined ? [] : [`adapter ${quantityIn(adapter.value, wanted)}`]),
  ];
}

function stubWords(stub: Setup["stub"], wanted: WantedUnits): string {
  if (stub === undefined) return "not stated";
  if (stub.value === "none") return "none";
  const { bore, length } = stub.value;
  return length === undefined
    ? quantityIn(bore, wanted)
    : `${quantityIn(bore, wanted)} length ${quantityIn(length, wanted)}`;
}

function assumptions({ setup, repeatability }: RunResult, wanted: WantedUnits): readonly string[] {
  const { bench, target, air, statedAir, leak, direction } = setup;
  const isRepeatAssumed = bench !== undefined && repeatability.source === "default";
  const stated = statedAir?.value;
  const isDry =
    air.source !== "default" &&
    stated?.humidity === undefined &&
    stated?.dewPoint === undefined &&
    stated?.wetBulb === undefined;
  return [
    ...(target.source === "default" ? [`target ${quantityIn(target.value, wanted)}`] : []),
    ...(air.source === "default" ? ["air isa"] : []),
    ...(isDry ? ["dry air"] : []),
    ...(leak === undefined ? ["no leak"] : []),
    ...(isRepeatAssumed ? [`repeatability ${shareWords(repeatability.deviation)}`] : []),
    ...(direction.source === "default" ? [`direction ${direction.value}`] : []),
  ];
}
