// Lifts of a stage at which its baseline was not read.
import { compareRuns } from "../../shared/calc/comparison.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { liftText } from "../../shared/render/station-words.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { baselineSpan } from "./places.ts";
import { rule } from "./rule.ts";

/** Lifts that are named one by one; of more only the number is told. */
const MOST_NAMED = 4;

const STAGES = (last: string) => `${INTAKE_SESSION}run as-cast
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
     0.300               28.0      150.0
run ported
  baseline   as-cast
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       57.0
     0.200               28.0      112.0
     ${last}
`;

export const liftsNotShared = rule<{ baseline: string; between: string; beyond: string }>({
  code: "lifts-not-shared",
  severity: "hint",
  message: ({ baseline, between, beyond }) => {
    const parts = [
      ...(between === "" ? [] : [`${between} (between its lifts: a gain there stands on a straight line)`]),
      ...(beyond === "" ? [] : [`${beyond} (beyond its lifts: no gain there)`]),
    ];
    return `the baseline ${baseline} was not read at ${parts.join(" and ")}`;
  },
  help: () => "read both stages at the same lifts; a stations line in their sessions keeps them alike",
  what: "A run has readings at lifts at which its baseline has none.",
  why: "A gain is only as good as the lifts that both have; what lies between is drawn, and beyond the ends nothing is known.",
  bad: STAGES("0.350               28.0      168.0"),
  good: STAGES("0.300               28.0      155.0"),
  checkPair({ as, own, other }, report) {
    if (as !== "baseline" || other.rising.length === 0) return;
    const alone = compareRuns(own, other).lifts.filter(
      (lift) => lift.branch === "rising" && lift.own?.isRead && lift.baseline?.isRead !== true,
    );
    if (alone.length === 0) return;
    const { lift: unit } = displayUnits(own.setup);
    const words = (is: (lift: (typeof alone)[number]) => boolean) => {
      const lifts = alone.filter(is).map(({ lift }) => liftText(lift, unit));
      if (lifts.length > MOST_NAMED) return `${lifts.length} lifts`;
      return lifts.length === 0 ? "" : `${lifts.join(", ")} ${unit.symbol}`;
    };
    report(baselineSpan(own.setup.run), {
      baseline: other.setup.run.id,
      between: words(({ baseline }) => baseline !== undefined),
      beyond: words(({ baseline }) => baseline === undefined),
    });
  },
});
