// What a ladder gives, in words, as hover and table say it.
import type { LadderResult } from "../model/ladder-result.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { ladderUnits } from "./ladder-units.ts";
import type { Fact } from "./run-facts.ts";
import type { WantedUnits } from "./wanted-units.ts";

const VERDICTS = {
  "as-expected": "as a port does",
  steep: "steeper than a port: a fine gap leaks",
  flat: "flatter than a port: it loses flow as the air speeds up, or the bench is at its limit",
  kinked: "with a kink: the port lets go there, or the bench is at its limit",
} as const;

/** The power, what was to be expected, and the kink. */
export function ladderFacts(result: LadderResult, wanted: WantedUnits = []): readonly Fact[] {
  const { points, law, nozzle, allowance, kink, verdict } = result;
  const { depression: unit } = ladderUnits(result, wanted);
  const power = (value: number) => formatFixed(value, 3);
  const steps = `${points.length} that can be used`;
  if (law === undefined || verdict === undefined) return [{ label: "steps", words: steps }];
  const expected = nozzle === undefined ? "0.500" : `${power(Math.min(nozzle, 0.5))} to 0.500`;
  return [
    { label: "steps", words: steps },
    {
      label: "exponent",
      words: `${power(law.exponent)} ± ${power(allowance)} (95 %); a port gives ${expected}: ${VERDICTS[verdict]}`,
    },
    ...(kink === undefined
      ? []
      : [
          {
            label: "kink",
            words: `at ${Number(fromSI(kink.depression, unit).toPrecision(3))} ${unit.symbol}: ${power(kink.below)} below, ${power(kink.above)} above`,
          },
        ]),
  ];
}

/** What a reader asks for first. */
export function ladderSummary({ law, allowance, verdict }: LadderResult): readonly string[] {
  if (law === undefined || verdict === undefined) return [];
  return [`exponent ${formatFixed(law.exponent, 3)} ± ${formatFixed(allowance, 3)}`, VERDICTS[verdict]];
}
