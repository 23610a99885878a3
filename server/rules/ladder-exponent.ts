// A ladder whose flow does not go with the square root of depression.
import type { LadderResult } from "../../shared/model/ladder-result.ts";
import { formatFixed } from "../../shared/quantity/digits.ts";
import { ladderUnits } from "../../shared/render/ladder-units.ts";
import { shifted } from "../../shared/text/span.ts";
import { BARE_SESSION } from "./examples.ts";
import { rule } from "./rule.ts";
import { inUnit, percent } from "./words.ts";

/** From this duty on a bench has nothing left to give (common practice, no published source). */
const AT_ITS_LIMIT = 0.97;

export const ladderExponent = rule<{ what: string; remedy: string }>({
  code: "ladder-exponent",
  severity: "warning",
  message: ({ what }) => what,
  help: ({ remedy }) => remedy,
  what: "The flow of a depression ladder goes with another power of depression than a port's does (between an ideal nozzle's and 0.5), or with two powers that meet in a kink, by more than chance.",
  why: "A power above 0.5 speaks of a fine gap that leaks, one that drops on the way of a port that lets go or of a bench at its limit. Results quoted at another depression are wrong by as much.",
  bad: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.400               28.0      190.5
ladder 0.400 in of r1
  depression[inH2O]  flow[cfm]
                8.0       99.0
               12.0      123.0
               16.0      144.0
               20.0      162.5
               24.0      180.0
               28.0      196.0
`,
  good: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.400               28.0      190.5
ladder 0.400 in of r1
  depression[inH2O]  flow[cfm]
                8.0      102.3
               12.0      125.1
               16.0      144.4
               20.0      161.3
               24.0      176.6
               28.0      190.6
`,
  check({ ladders }, report) {
    for (const { placed, result } of ladders()) {
      const words = wordsOf(result);
      if (words !== undefined) report(shifted(placed.entity.origin.heading, placed.start), words);
    }
  },
});

function wordsOf(result: LadderResult): { what: string; remedy: string } | undefined {
  const { law, verdict, nozzle = 0.5, allowance, kink, points } = result;
  if (law === undefined || verdict === undefined || verdict === "as-expected") return undefined;
  const unit = ladderUnits(result).depression;
  const power = (value: number) => formatFixed(value, 3);
  const expected = `${power(Math.min(nozzle, 0.5))} to 0.500`;
  const limit = points.some(({ duty }) => duty !== undefined && duty >= AT_ITS_LIMIT);
  const atLimit = limit ? "the motors are at their limit: read no higher than they can hold; " : "";
  if (kink !== undefined) {
    const { below, above, depression, chance } = kink;
    const less = chance < 1e-3 ? "less than 0.1 %" : percent(chance);
    return {
      what: `flow goes with depression to the power ${power(below)} up to ${inUnit(depression, unit)} and ${power(above)} above (chance alone bends a ladder so in ${less}; a port gives ${expected})`,
      remedy:
        above < below
          ? `${atLimit}above the kink the port lets go or the bench has nothing left: take a trace there, from shut at full speed`
          : "what leaks grows above the kink: look at valve, gasket and adapter with the port taped",
    };
  }
  const what = `flow goes with depression to the power ${power(law.exponent)} \u00b1 ${power(allowance)}; a port gives ${expected}`;
  return verdict === "steep"
    ? {
        what,
        remedy:
          "a fine gap leaks: tape the port, read the leak at these depressions, and state it with its exponent",
      }
    : {
        what,
        remedy: `${atLimit}the port loses flow as the air speeds up, or the leak is stated too small: take a trace at the highest step`,
      };
}
