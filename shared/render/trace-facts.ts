// What a trace gives, in words, as hover, table and picture say it.
import { LEAST_DEPRESSION, LEAST_STEP } from "../calc/trace/area-steps.ts";
import type { Approach, AreaStep, Fitted, SteadyMean, TraceResult } from "../model/trace-result.ts";
import { decimalsFor, formatFixed } from "../quantity/digits.ts";
import { fromSI, type Unit } from "../quantity/unit.ts";
import type { Fact } from "./run-facts.ts";
import { shownNumber, shownUncertainty } from "./shown-number.ts";
import { type TraceUnits, traceUnits } from "./trace-units.ts";
import { quantityIn, type WantedUnits } from "./wanted-units.ts";

/** What has not been looked for has not been found either. */
const NO_STEP = `not seen: no step of the apparent area of ${LEAST_STEP * 100} % or more above ${LEAST_DEPRESSION * 100} % of the target`;

/** The facts of a trace in the order in which they happen; a trace that cannot be used says so. */
export function traceFacts(result: TraceResult, wanted: WantedUnits = []): readonly Fact[] {
  const { samples, flow, settling, approach, steady, steps, interval, gaps, setup } = result;
  if (interval === 0) return [{ label: "samples", words: "none that can be used" }];
  const units = traceUnits(result, wanted);
  const time = units.time;
  const count = samples.time.length;
  return [
    {
      label: "samples",
      words: `${count}, ${rounded(fromSI(interval, time), 3)} ${time.symbol} apart, up to ${rounded(fromSI(samples.time[count - 1] ?? 0, time), 4)} ${time.symbol}`,
    },
    ...(gaps === undefined
      ? []
      : [
          {
            label: "gaps",
            words: `${gaps.count}, the longest ${rounded(fromSI(gaps.to - gaps.from, time), 3)} ${time.symbol} from ${rounded(fromSI(gaps.from, time), 4)} ${time.symbol} on`,
          },
        ]),
    {
      label: "settled",
      words:
        settling === undefined
          ? `never within ${rounded(fromSI(setup.within.value, units.depression), 3)} ${units.depression.symbol} of ${quantityIn(setup.target.value, wanted)}`
          : `after ${rounded(fromSI(settling.time, time), 4)} ${time.symbol} within ${rounded(fromSI(setup.within.value, units.depression), 3)} ${units.depression.symbol} of ${quantityIn(setup.target.value, wanted)}`,
    },
    ...(approach === undefined ? [] : [{ label: "approach", words: approachWords(approach, units) }]),
    ...overshootFact(result, units),
    ...(steady === undefined
      ? []
      : [
          {
            label: "steady",
            words: `${rounded(fromSI(steady.from, time), 4)} to ${rounded(fromSI(steady.to, time), 4)} ${time.symbol}: ${[
              meanWords(steady.depression, units.depression),
              ...(steady.flow === undefined ? [] : [`corrected flow ${meanWords(steady.flow, units.flow)}`]),
            ].join("; ")}`,
          },
        ]),
    ...(flow === undefined || steps.length > 0 ? [] : [{ label: "let go", words: NO_STEP }]),
    ...steps.map((step) => ({ label: step.kind.replace("let-go", "let go"), words: stepWords(step, units) })),
  ];
}

/** The order, its numbers with their standard errors, and what the fit leaves over. */
export function approachWords(approach: Approach, units: TraceUnits): string {
  const left = `${rounded(approach.scatter / units.depression.factor, 2)} ${units.depression.symbol}`;
  return `${approachNumbers(approach, units)} (standard errors; ${left} left over)`;
}

/** The order, and its numbers with their standard errors. */
export function approachNumbers(approach: Approach, { time }: TraceUnits): string {
  const { order, deadTime, timeConstant, naturalFrequency, damping } = approach;
  const seconds = (value: Fitted) => `${fittedWords(value, time.factor)} ${time.symbol}`;
  const numbers = [
    `dead time ${seconds(deadTime)}`,
    ...(timeConstant === undefined ? [] : [`time constant ${seconds(timeConstant)}`]),
    ...(naturalFrequency === undefined
      ? []
      : [`natural frequency ${fittedWords(naturalFrequency, 1)} rad/s`]),
    ...(damping === undefined ? [] : [`damping ${fittedWords(damping, 1)}`]),
  ];
  return `${order === 1 ? "first" : "second"} order, ${numbers.join(", ")}`;
}

function overshootFact({ overshoot, steady }: TraceResult, units: TraceUnits): readonly Fact[] {
  if (overshoot === undefined || steady === undefined) return [];
  const share = formatFixed((overshoot / steady.depression.mean) * 100, 1);
  const size = rounded(overshoot / units.depression.factor, 2);
  return [{ label: "overshoot", words: `${size} ${units.depression.symbol}, ${share} %` }];
}

function meanWords({ mean, error, scatter, effective }: SteadyMean, unit: Unit): string {
  const value = fromSI(mean, unit);
  if (scatter === 0) return `${rounded(value, 5)} ${unit.symbol} (every sample alike)`;
  const decimals = decimalsFor(error / unit.factor) ?? 3;
  const worth = effective < 9.5 ? rounded(effective, 2) : formatFixed(effective, 0);
  return `${formatFixed(value, decimals)} ± ${formatFixed(error / unit.factor, decimals)} ${unit.symbol} (scatter ${rounded(scatter / unit.factor, 2)}, worth ${worth} ${worth === "1" ? "reading" : "readings"})`;
}

/** What a reader asks for first: where the port lets go, when it had settled, and at what. */
export function traceSummary(result: TraceResult, wanted: WantedUnits = []): readonly string[] {
  const { interval, settling, steady, steps } = result;
  if (interval === 0) return [];
  const units = traceUnits(result, wanted);
  const at = (time: number) => `${rounded(fromSI(time, units.time), 4)} ${units.time.symbol}`;
  const steadyFlow = steady?.flow;
  return [
    ...steps.map((step) => `${stepLabel(step)} at ${at(step.time)}`),
    settling === undefined ? "never settled" : `settled after ${at(settling.time)}`,
    ...(steadyFlow === undefined ? [] : [`steady: corrected flow ${steadyWords(steadyFlow, units.flow)}`]),
  ];
}

/** A mean with its standard error. */
export function steadyWords({ mean, error }: SteadyMean, unit: Unit): string {
  const decimals = decimalsFor(error / unit.factor) ?? 1;
  return `${formatFixed(fromSI(mean, unit), decimals)} ± ${formatFixed(error / unit.factor, decimals)} ${unit.symbol}`;
}

/** In few words: `lets go: -5.9 %`. */
export function stepLabel(step: AreaStep): string {
  return `${step.kind === "let-go" ? "lets go" : "back"}: ${stepSize(step)}`;
}

/** `-5.9 %`. */
export function stepSize({ kind, size, error }: AreaStep): string {
  const decimals = Math.min(1, decimalsFor(error * 100) ?? 1);
  return `${kind === "let-go" ? "-" : "+"}${formatFixed(size * 100, decimals)} %`;
}

/** When, where, by how much, and how sure it is. */
export function stepWords(step: AreaStep, { time, depression, flow }: TraceUnits): string {
  const size = step.size * 100;
  const decimals = decimalsFor(step.error * 100) ?? 1;
  const sign = step.kind === "let-go" ? "-" : "+";
  const flows = [step.before, step.after].map((value) => shownNumber(fromSI(value, flow), step.error));
  return `at ${rounded(fromSI(step.time, time), 4)} ${time.symbol} and ${rounded(fromSI(step.depression, depression), 3)} ${depression.symbol}, ${step.phase}: apparent area ${sign}${formatFixed(size, decimals)} ± ${shownUncertainty(step.error * 100)} % (corrected flow ${flows.join(" → ")} ${flow.symbol}), confidence ${confidence(step.chance)}`;
}

/** One less the chance that scatter does it. */
export function confidence(chance: number): string {
  return chance < 1e-4 ? "above 99.99 %" : `${formatFixed((1 - chance) * 100, chance < 0.01 ? 2 : 1)} %`;
}

function fittedWords({ value, error }: Fitted, factor: number): string {
  const decimals = Number.isFinite(error) ? decimalsFor(error / factor) : undefined;
  if (decimals === undefined) return `${rounded(value / factor, 3)} (not told by the samples)`;
  return `${formatFixed(value / factor, decimals)} ± ${formatFixed(error / factor, decimals)}`;
}

function rounded(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits)));
}
