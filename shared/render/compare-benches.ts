// What two benches that read one port say of each other, in words.
import type { Approach, TwoBenches } from "../calc/two-benches.ts";
import { formatFixed } from "../quantity/digits.ts";
import type { Unit } from "../quantity/unit.ts";
import type { CompareRun } from "./compare-input.ts";
import { displayUnits } from "./display-units.ts";
import { hiddenArgs, hiddenMessage } from "./hidden-words.ts";
import type { Fact } from "./run-facts.ts";
import { liftText, timeText } from "./station-words.ts";

/** The facts of two runs of one port on two benches, in the order in which a reader asks for them. */
export function benchFacts(first: CompareRun, second: CompareRun, found: TwoBenches): readonly Fact[] {
  const units = displayUnits(first.result.setup);
  const names = [first, second].map(({ result }) => result.setup.bench?.id ?? "") as [string, string];
  const approaches = [found.approaches.first, found.approaches.second];
  const both = (words: (approach: Approach) => string | undefined) => {
    const said = approaches.map((approach, index) => {
      const text = words(approach);
      return text === undefined ? undefined : `${names[index]} ${text}`;
    });
    return said.filter((text) => text !== undefined).join("; ");
  };
  const facts: readonly Fact[] = [
    { label: "scale", words: scaleWords(found, names) },
    { label: "agreement", words: agreementWords(found, units.lift) },
    ...found.hidden.map((hidden) => ({
      label: "hidden",
      words: hiddenMessage(hiddenArgs(first.result, second.result, hidden)),
    })),
    {
      label: "settle",
      words: both(({ settle }) => {
        if (settle === undefined) return undefined;
        const [least, median, most] = [settle.least, settle.median, settle.most].map((time) =>
          timeText(time, units.time),
        );
        return `${median} at the median, ${least} to ${most}`;
      }),
    },
    {
      label: "time",
      words: both(({ time }) => (time === undefined ? undefined : `${timeText(time, units.time)} in all`)),
    },
  ];
  return facts.filter(({ words }) => words !== "");
}

function scaleWords({ lifts: shared, scale }: TwoBenches, [first, second]: [string, string]): string {
  if (shared.length === 0) return "";
  if (scale === undefined)
    return "cannot be told: the port falls back on one of the benches at every lift that both read";
  const { ratio, uncertainty, lifts, stated, en } = scale;
  const reads = `${second} reads ${formatFixed(ratio, 4)} of ${first}, ±${formatFixed(ratio * uncertainty, 4)} (k = 2, from ${lifts} ${lifts === 1 ? "lift" : "lifts"})`;
  if (stated === undefined || en === undefined)
    return `${reads}; a bench does not state the uncertainty of its flow scale`;
  const verdict = Math.abs(en) <= 1 ? "agrees with" : "is beyond";
  return `${reads}; this ${verdict} what both state of their scales, ±${formatFixed(100 * stated, 1)} % (En ${formatFixed(en, 2)})`;
}

function agreementWords({ lifts, scale }: TwoBenches, unit: Unit): string {
  const judged = lifts.filter(({ en }) => en !== undefined);
  if (judged.length === 0) return "";
  const list = (beyond: typeof lifts) =>
    `${beyond.map(({ lift }) => liftText(lift, unit)).join(", ")} ${unit.symbol}`;
  const apart = judged.filter(({ en }) => Math.abs(en ?? 0) > 1);
  const shaped =
    scale === undefined ? [] : lifts.filter(({ residual, noise }) => Math.abs(residual ?? 0) > noise);
  return [
    apart.length === 0
      ? `within their uncertainties at all ${judged.length} lifts (|En| ≤ 1)`
      : `beyond their uncertainties (|En| > 1) at ${list(apart)}`,
    ...(shaped.length === 0 ? [] : [`after the ratio something is left at ${list(shaped)}`]),
  ].join("; ");
}
