// A depression that is not the target.
import { cellSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { inUnit, percent, written } from "./words.ts";

export const offTarget = rule<{
  depression: string;
  off: string;
  target: string;
  within: string;
  flow: string;
  /** What the display has scaled its flow to, "" where it shows flow as it is. */
  scaled: string;
}>({
  code: "off-target",
  severity: "warning",
  message: ({ depression, off, target, within }) =>
    `the depression, ${depression}, is ${off} off the target of ${target} (band ${within})`,
  help: ({ flow, scaled }) =>
    `hold the target and read again; ${scaled === "" ? `uncorrected this is ${flow} in flow` : `the display has scaled to ${scaled}, by ${flow} in flow`}`,
  what: "A row's depression is off the target by more than the bench, the session or the run allows.",
  why: "While the depression is still on its way, flow and depression do not belong together, and no correction mends that.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
  within     0.2 inH2O
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               27.2       60.0
`,
  good: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
  within     0.2 inH2O
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               27.8       60.0
`,
  checkRun(result, report) {
    const { target, within, bench } = result.setup;
    const display = bench?.shows?.at;
    const { value, unit } = target.value;
    const scaledTo = display?.value ?? value;
    const band = within.value * (1 + 1e-9);
    const depressions = result.numbers.depression;
    for (let at = 0; at < depressions.length; at++) {
      const depression = depressions[at] ?? Number.NaN;
      const off = depression - value;
      if (!(Math.abs(off) > band)) continue;
      const row = result.written[at];
      if (row === undefined || row.void !== undefined) continue;
      report(cellSpan(result.setup.run, row, "depression"), {
        depression: inUnit(depression, unit),
        off: inUnit(Math.abs(off), unit),
        target: written(target.value),
        within: inUnit(within.value, unit),
        flow: depression > 0 ? percent(Math.abs(Math.sqrt(scaledTo / depression) - 1)) : "all",
        scaled: display === undefined ? "" : written(display),
      });
    }
  },
});
