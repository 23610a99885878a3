// Flow that falls while the valve still opens, by no more than chance may do.
import { INTAKE_SESSION } from "./examples.ts";
import { fallBackPlace, type UnresolvedArgs, unresolvedArgs, unresolvedMessage } from "./fall-back-words.ts";
import { rule } from "./rule.ts";

export const fallBackNotResolved = rule<UnresolvedArgs>({
  code: "fall-back-not-resolved",
  severity: "hint",
  message: unresolvedMessage,
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
  checkOdd(result, report) {
    for (const fall of result.fallBacks) {
      const place = fall.resolved ? undefined : fallBackPlace(fall);
      if (place !== undefined) report(place.span, unresolvedArgs(result, fall), { related: place.related });
    }
  },
});
