// A baseline that was read in another set-up.
import { type Mismatch, mismatches } from "../../shared/calc/comparable.ts";
import { mismatchWords } from "../../shared/render/mismatch-words.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { baselineSpan } from "./places.ts";
import { rule } from "./rule.ts";

const STAGES = (conditions: string) => `${INTAKE_SESSION}run as-cast
${conditions}  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
     0.200               28.0      108.0
run ported
  baseline   as-cast
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       57.0
     0.200               28.0      112.0
`;

export const notComparable = rule<{ run: string; baseline: string; differences: string; remedy: string }>({
  code: "not-comparable",
  severity: "warning",
  message: ({ run, baseline, differences }) =>
    `${run} and its baseline ${baseline} were not read alike: ${differences}`,
  help: ({ remedy }) => `${remedy}; until then a gain is not the port's alone`,
  what: "A run and its baseline differ in target, quoted depression, reference air, adapter, entry, stub, direction, side or valve.",
  why: "What differs in the set-up stands in the gain as if the port had done it.",
  bad: STAGES("  entry      bare\n"),
  good: STAGES(""),
  checkPair({ as, own, other }, report) {
    const differences = as === "baseline" ? mismatches(own.setup, other.setup) : [];
    if (differences.length === 0) return;
    report(baselineSpan(own.setup.run), {
      run: own.setup.run.id,
      baseline: other.setup.run.id,
      differences: mismatchWords(differences),
      remedy: remedyOf(differences),
    });
  },
});

/** What was only computed for other air or another depression needs no reading. */
function remedyOf(differences: readonly Mismatch[]): string {
  const lines = differences.map(({ what }) =>
    what === "reference" ? "reference isa" : what === "quote" ? "quote 28 inH2O" : undefined,
  );
  return lines.includes(undefined)
    ? "read one of them again in the set-up of the other"
    : `write the same line into both sessions, such as: ${lines.join(", and: ")}`;
}
