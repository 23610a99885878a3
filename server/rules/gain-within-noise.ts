// A stage whose gain over its baseline is no more than chance may do.
import { compareRuns } from "../../shared/calc/comparison.ts";
import { scaleUncertainty } from "../../shared/calc/gain.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { overLift } from "../../shared/render/station-words.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { baselineSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { percent, signed } from "./words.ts";

const STAGES = (first: string, second: string) => `${INTAKE_SESSION}run as-cast
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
run ported
  baseline   as-cast
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       ${first}
     0.200               28.0      ${second}
`;

/** More readings than this nobody takes (common sense). */
const MOST_TIMES = 25;

export const gainWithinNoise = rule<{
  baseline: string;
  gain: string;
  range: string;
  noise: string;
  times: number;
}>({
  code: "gain-within-noise",
  severity: "hint",
  message: ({ baseline, gain, range, noise }) =>
    `the gain over ${baseline} is within the noise: ${gain} in the mean ${range}, where chance alone gives ${noise}`,
  help: ({ times }) =>
    times === 0
      ? "take the two as equal: no number of readings that anyone takes would tell them apart here"
      : `${times} times as many readings in both runs would resolve a gain of this size`,
  what: "Neither the mean gain over the baseline nor that of any third of the lift range is more than the bench could have made up.",
  why: "A gain of one percent on a bench that repeats to one percent is nothing yet.",
  bad: STAGES("55.1", "108.2"),
  good: STAGES("56.0", "110.3"),
  checkPair({ as, own, other }, report) {
    if (as !== "baseline") return;
    const { mean, bands, mismatches } = compareRuns(own, other);
    if (mean === undefined || mismatches.length > 0) return;
    if ([mean, ...bands].some(({ isResolved }) => isResolved)) return;
    const { lift } = displayUnits(own.setup);
    report(baselineSpan(own.setup.run), {
      baseline: other.setup.run.id,
      gain: signed(mean.gain),
      range: overLift(mean, lift),
      noise: percent(mean.noise),
      times: timesMore(mean.gain, mean.noise, 1.96 * scaleUncertainty(own, other)),
    });
  },
});

/** Noise falls with the root of the readings, but for what two benches' scales leave open; 0 where that is too many. */
function timesMore(gain: number, noise: number, scale: number): number {
  const left = gain ** 2 - scale ** 2;
  const times = left > 0 ? Math.floor((noise ** 2 - scale ** 2) / left) + 1 : Number.POSITIVE_INFINITY;
  return times > MOST_TIMES ? 0 : times;
}
