// Cylinders of one stage that do not flow alike.
import { type CylinderSpread, cylinderSpreads } from "../../shared/calc/cylinder-spread.ts";
import type { RunResult } from "../../shared/model/result.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { liftText } from "../../shared/render/station-words.ts";
import { shifted } from "../../shared/text/span.ts";
import type { SettledRun } from "../analysis/project.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { inUnit, percent } from "./words.ts";

const sweep = (cylinder: number, flows: readonly string[]): string => `run c${cylinder}
  stage      "as cast"
  cylinder   ${cylinder}
  lift[in]  depression[inH2O]  flow[cfm]
     0.200               28.0      ${flows[0]}
     0.300               28.0      ${flows[1]}
`;

export const cylindersApart = rule<{
  low: number;
  high: number;
  apart: string;
  lift: string;
  flows: string;
  limit: string;
  chance: string;
  lifts: string;
  mount: string;
}>({
  code: "cylinders-apart",
  severity: "warning",
  message: ({ low, high, apart, lift, flows, limit, chance, lifts }) =>
    `cylinders ${low} and ${high} flow ${apart} apart at ${lift} (${flows}; the limit is ${limit}, and chance alone gives ${chance} here)${lifts}`,
  help: ({ low, high, lift, mount }) =>
    `read both again at ${lift}, with the same adapter and ${mount}; if it stays, bring cylinder ${low} up to ${high}: compare throat, seat and short side before more is cut`,
  what: "Two cylinders of one stage of a port differ at a lift by more than the limit, and by more than the bench's repeatability allows for the furthest of as many cylinders.",
  why: "An engine is tuned as one. A cylinder that flows less runs richer than the others, and the curve of one cylinder no longer speaks for the head.",
  bad: `${INTAKE_SESSION}${sweep(1, ["108.0", "150.0"])}${sweep(2, ["107.8", "144.5"])}`,
  good: `${INTAKE_SESSION}${sweep(1, ["108.0", "150.0"])}${sweep(2, ["107.8", "148.2"])}`,
  check(input, report) {
    for (const runs of stages(input.runs)) {
      const placed = new Map<RunResult, SettledRun>(runs.map((run) => [input.compute(run), run]));
      const spreads = cylinderSpreads([...placed.keys()]);
      const apart = spreads.filter(
        ({ difference, chance }) => difference > input.limits.cylinders && difference > chance,
      );
      const worst = apart.reduce<CylinderSpread | undefined>(
        (most, spread) => (most === undefined || spread.difference > most.difference ? spread : most),
        undefined,
      );
      if (worst === undefined) continue;
      const { lowest, highest } = worst;
      const { lift, flow } = displayUnits(lowest.result.setup);
      const placeOf = ({ row, result }: typeof lowest) =>
        shifted(rowSpan(row.row), placed.get(result)?.placed.start ?? 0);
      const args = {
        low: lowest.cylinder,
        high: highest.cylinder,
        apart: percent(worst.difference),
        lift: `${liftText(worst.lift, lift)} ${lift.symbol}`,
        flows: `${inUnit(lowest.flow, flow)} and ${inUnit(highest.flow, flow)}`,
        limit: percent(input.limits.cylinders),
        chance: percent(worst.chance),
        mount: lowest.result.setup.port?.side === "exhaust" ? "stub" : "entry",
        lifts: apart.length === 1 ? "" : `, and at ${apart.length - 1} more of ${spreads.length} lifts`,
      };
      const related = [{ span: placeOf(highest), message: `cylinder ${highest.cylinder}` }];
      report(placeOf(lowest), args, { related });
    }
  },
});

/** Runs of two cylinders or more that were read at one stage of a port, the same way and on one bench. */
function stages(runs: readonly SettledRun[]): readonly (readonly SettledRun[])[] {
  const numbered = runs.filter(({ setup: { run } }) => run.cylinder !== undefined);
  if (numbered.length === 0) return [];
  const found = new Map<string, SettledRun[]>();
  for (const run of numbered) {
    const { port, bench, direction } = run.setup;
    const { stage } = run.setup.run;
    if (port === undefined || bench === undefined) continue;
    const key = JSON.stringify([port.id, bench.id, direction.value, stage ?? null]);
    const same = found.get(key);
    if (same === undefined) found.set(key, [run]);
    else same.push(run);
  }
  return [...found.values()].filter((same) => new Set(same.map(({ setup }) => setup.run.cylinder)).size > 1);
}
