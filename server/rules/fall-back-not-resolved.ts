// Flow that falls while the valve still opens, by no more than chance may do.
import { INTAKE_SESSION } from "./examples.ts";
import { fallPlace } from "./fall-back.ts";
import { rule } from "./rule.ts";
import { liftWords, percent } from "./words.ts";

export const fallBackNotResolved = rule<{
  depth: string;
  lift: string;
  chance: string;
  readings: number;
  lifts: string;
}>({
  code: "fall-back-not-resolved",
  severity: "hint",
  message: ({ depth, lift, chance }) =>
    `flow drops ${depth} after ${lift}, which is not resolved: chance alone gives ${chance} here`,
  help: ({ readings, lifts }) =>
    `${readings} readings in all at each of ${lifts} would resolve a drop of this size`,
  what: "Corrected flow drops while the valve opens further, but by less than a flat curve of as many stations may do by chance.",
  why: "It may be the first sign of a port letting go, or nothing; a few more readings tell.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.300               28.0      150.0
     0.400               28.0      185.0
     0.500               28.0      183.4
     0.600               28.0      184.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.300               28.0      150.0
     0.400               28.0      185.0
     0.500               28.0      191.0
     0.600               28.0      192.0
`,
  checkRun(result, report) {
    for (const fall of result.fallBacks) {
      if (fall.resolved) continue;
      const place = fallPlace(result, fall);
      const lowest = fall.deepest.rows[0];
      if (place === undefined || lowest === undefined) continue;
      report(
        place.span,
        {
          depth: percent(fall.depth),
          lift: place.onset,
          chance: percent(fall.chance),
          readings: fall.readingsNeeded,
          lifts: `${place.onset} and ${liftWords(result.setup.run, lowest)}`,
        },
        { related: place.related },
      );
    }
  },
});
