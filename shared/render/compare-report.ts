// Turns comparisons into the machine output of `compare`.
import type { ComparedLift, ComparedMean, Gained } from "../calc/comparison.ts";
import type { CurveAt } from "../calc/curve-at.ts";
import type { Approach, TwoBenches } from "../calc/two-benches.ts";
import type { CompareEntry, CompareReport, CompareSide } from "../messages/compare-report.ts";
import type { ReportQuantity } from "../messages/report.ts";
import { SCHEMA_VERSION } from "../messages/schema-version.ts";
import type { Quantity } from "../quantity/quantity.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import type { CompareRun } from "./compare-input.ts";
import { type Compared, differs } from "./compare-table.ts";
import { type DisplayUnits, displayUnits } from "./display-units.ts";
import { rounded } from "./rounded.ts";

/** The comparisons as JSON data: values in the baseline's units and in SI, shares as bare numbers, 12 significant digits. */
export function compareReport(baseline: CompareRun, all: readonly Compared[]): CompareReport {
  const units = displayUnits(baseline.result.setup);
  return {
    schemaVersion: SCHEMA_VERSION,
    baseline: sideOf(baseline),
    comparisons: all.map((compared) => entryOf(compared, units)),
  };
}

function entryOf(compared: Compared, units: DisplayUnits): CompareEntry {
  const { run, comparison, isTold, benches } = compared;
  const { mismatches, lifts, mean, bands } = comparison;
  const [low, middle, high] = isTold ? bands.map((band) => meanOf(band, units)) : [];
  return {
    run: sideOf(run),
    comparable: mismatches.length === 0,
    sameReadings: comparison.sameReadings,
    mismatches: mismatches.map(({ what, own, theirs }) => ({ what, run: own, baseline: theirs })),
    differs: differs(compared),
    lifts: lifts.map((lift) => liftOf(lift, isTold, units)),
    mean: mean === undefined || !isTold ? null : meanOf(mean, units),
    bands: low === undefined || middle === undefined || high === undefined ? null : { low, middle, high },
    benches: benches === undefined ? null : benchesOf(benches, units),
  };
}

function sideOf({ file, revision, result: { setup } }: CompareRun): CompareSide {
  const { run, port, bench } = setup;
  return {
    file,
    revision: revision ?? null,
    id: run.id,
    title: run.title ?? null,
    port: port?.id ?? null,
    side: port?.side ?? null,
    cylinder: run.cylinder ?? null,
    stage: run.stage ?? null,
    bench: bench?.id ?? null,
    date: setup.date?.value ?? null,
    direction: setup.direction.value,
    target: written(setup.target.value),
    quote: written(setup.quote.value),
    reference: setup.reference?.value.name ?? null,
  };
}

function liftOf(
  { lift, branch, own, baseline, gained }: ComparedLift,
  isTold: boolean,
  { lift: liftUnit, flow }: DisplayUnits,
): CompareEntry["lifts"][number] {
  const flowOf = (at: CurveAt | undefined) =>
    at === undefined ? null : { ...quantity(at.flow, flow), isRead: at.isRead };
  const both = own !== undefined && baseline !== undefined;
  return {
    lift: quantity(lift, liftUnit),
    branch,
    baseline: flowOf(baseline),
    run: flowOf(own),
    difference: isTold && both ? quantity(own.flow - baseline.flow, flow) : null,
    gain: isTold && gained !== undefined ? gainOf(gained) : null,
  };
}

function gainOf({ gain, noise, isResolved }: Gained) {
  return { gain: rounded(gain), chance: rounded(noise), resolved: isResolved };
}

function meanOf(mean: ComparedMean, { lift, flow }: DisplayUnits): NonNullable<CompareEntry["mean"]> {
  return {
    from: quantity(mean.from, lift),
    to: quantity(mean.to, lift),
    baseline: quantity(mean.baseline, flow),
    run: quantity(mean.own, flow),
    ...gainOf(mean),
  };
}

function benchesOf(
  { scale, lifts, hidden, approaches }: TwoBenches,
  units: DisplayUnits,
): NonNullable<CompareEntry["benches"]> {
  return {
    scale:
      scale === undefined
        ? null
        : {
            ratio: rounded(scale.ratio),
            uncertainty: rounded(scale.uncertainty),
            lifts: scale.lifts,
            stated: orNull(scale.stated),
            en: orNull(scale.en),
          },
    lifts: lifts.map(({ lift, isRead, en, residual, noise }) => ({
      lift: quantity(lift, units.lift),
      isRead,
      en: orNull(en),
      leftOver: orNull(residual),
      chance: rounded(noise),
    })),
    hidden: hidden.map(({ fall, resolvedBy, flat }) => ({
      onset: quantity(fall.onset.lift, units.lift),
      deepest: quantity(fall.deepest.lift, units.lift),
      depth: rounded(fall.depth),
      resolvedBy: resolvedBy === "first" ? "baseline" : "run",
      isFlatThere: flat !== undefined,
    })),
    approaches: { baseline: approachOf(approaches.first, units), run: approachOf(approaches.second, units) },
  };
}

function approachOf({ settle, time }: Approach, { time: unit }: DisplayUnits) {
  return {
    settle:
      settle === undefined
        ? null
        : {
            least: quantity(settle.least, unit),
            median: quantity(settle.median, unit),
            longest: quantity(settle.most, unit),
          },
    time: time === undefined ? null : quantity(time, unit),
  };
}

function orNull(value: number | undefined): number | null {
  return value === undefined ? null : rounded(value);
}

function written({ value, unit }: Quantity): ReportQuantity {
  return quantity(value, unit);
}

function quantity(si: number, unit: Unit): ReportQuantity {
  return { value: rounded(fromSI(si, unit)), unit: unit.symbol, si: rounded(si) };
}
