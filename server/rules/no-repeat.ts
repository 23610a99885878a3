// A bench that does not say how well it repeats.
import { BARE_SESSION } from "./examples.ts";
import { conditionsSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { percent } from "./words.ts";

export const noRepeat = rule<{ bench: string; deviation: string }>({
  code: "no-repeat",
  severity: "hint",
  message: ({ bench, deviation }) =>
    `bench '${bench}' does not say how well it repeats; ${deviation} is taken`,
  help: () => "read one lift ten times, and write the standard deviation into the bench: repeat 0.35 %",
  what: "The bench states no repeatability, and the file has too few repeated readings to tell it from.",
  why: "A drop or a gain means something only beside what the bench does by itself.",
  bad: `headnote 1
bench north
  shows      flow
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  good: `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  checkSetup(run, report, input) {
    const { setup } = run;
    const repeatability = input.repeatability(setup);
    if (setup.bench === undefined || repeatability.source !== "default") return;
    // A line that cannot be read is an error already.
    if (setup.bench.origin.lines.has("repeat")) return;
    report(conditionsSpan(input, run), {
      bench: setup.bench.id,
      deviation: percent(repeatability.deviation),
    });
  },
});
