// Flow that falls while the valve still opens, by more than chance.

import { INTAKE_SESSION } from "./examples.ts";
import { type FallBackArgs, fallBackArgs, fallBackMessage, fallBackPlace } from "./fall-back-words.ts";
import { rule } from "./rule.ts";

export const fallBack = rule<FallBackArgs>({
  code: "fall-back",
  severity: "warning",
  message: fallBackMessage,
  help: ({ repeat }) => `repeat ${repeat}; if it stays, look at the short side`,
  what: "Corrected flow drops while the valve opens further, by more than a flat curve of as many stations does by chance in 5 % of sweeps.",
  why: "A healthy curve flattens. One that drops has let go of a wall, mostly of the short side, and an engine will find that too.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.300               28.0      150.0
     0.400               28.0      185.0
     0.500               28.0      178.0
     0.600               28.0      179.0
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
      const place = fall.resolved ? fallBackPlace(fall) : undefined;
      if (place !== undefined) report(place.span, fallBackArgs(result, fall), { related: place.related });
    }
  },
});
