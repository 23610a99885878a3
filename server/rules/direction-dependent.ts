// Lifts that pass one flow on the way up and another on the way down.
import { twoWaySweep } from "../../shared/calc/hysteresis.ts";
import { type DirectionArgs, directionArgs, directionMessage, directionPlace } from "./direction-words.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rule } from "./rule.ts";

export const directionDependent = rule<DirectionArgs>({
  code: "direction-dependent",
  severity: "warning",
  message: directionMessage,
  help: ({ lift }) =>
    `read ${lift} again from below and from above; if it stays, the flow has two states there: open from shut at full speed to see which one an engine gets`,
  what: "At one lift or more the readings on the way down differ from those on the way up by more than the bench's repeatability allows. The finding names the clearest lift and points to the others; among many lifts chance alone marks some, and it says how often.",
  why: "Air that has let go at a high lift may stay off on the way down. Which of the two flows an engine gets depends on how it opens the valve.",
  bad: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.200               28.0      108.0
     0.300               28.0      150.0
     0.400               28.0      178.0
     0.300               28.0      146.5
     0.200               28.0      107.8
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.200               28.0      108.0
     0.300               28.0      150.0
     0.400               28.0      178.0
     0.300               28.0      149.3
     0.200               28.0      107.8
`,
  checkOdd(result, report) {
    const sweep = twoWaySweep(result);
    const place = sweep && directionPlace(result, sweep);
    if (sweep !== undefined && place !== undefined)
      report(place.span, directionArgs(result, sweep, sweep.clearest), { related: place.related });
  },
});
