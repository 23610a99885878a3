// A Cd that cannot be computed because the port does not say enough.

import { columnValues } from "../../shared/calc/column-values.ts";
import { portArea } from "../../shared/calc/port-areas.ts";
import type { Port, Run } from "../../shared/model/model.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { statedSpan } from "./places.ts";
import { rule } from "./rule.ts";

export const noGeometry = rule<{ port: string; problem: string; cd: string }>({
  code: "no-geometry",
  severity: "hint",
  message: ({ port, problem, cd }) => `port '${port}' ${problem}, so ${cd} cannot be computed`,
  help: () => "state valve, seat with its width, throat and stem in the port",
  what: "A port does not state valve, seat width, throat or stem, or their sizes fit no valve.",
  why: "Each Cd refers to an area, and an area that is not known is not guessed.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
port p1
  side       intake
  valve      2.020 in
  throat     1.780 in
  stem       0.342 in
session 2026-03-02
  bench      north
  port       p1
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
  entry      radiused
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`,
  good: `${INTAKE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`,
  checkSetup(run, report, input) {
    const { port } = run.setup;
    const lift = firstLift(run.placed.entity);
    if (port === undefined || lift === undefined) return;
    const missing = missingOf(port);
    if (missing.length > 0) {
      const cd = port.valve === undefined ? "Cd on curtain, gap and head" : "Cd on the gap or the throat";
      report(statedSpan(input, run, "port"), {
        port: port.id,
        problem: `does not state ${missing.join(", ")}`,
        cd,
      });
    } else if (portArea("gap", port, lift) === undefined) {
      const problem = "has sizes that fit no valve (throat, stem, seat width and angle)";
      report(statedSpan(input, run, "port"), { port: port.id, problem, cd: "Cd on the gap" });
    }
  },
});

/** The lift of the first row that counts and has the valve open. */
function firstLift({ table }: Run): number | undefined {
  const lifts = columnValues(table, "lift");
  const row = table?.rows.find((entry) => entry.void === undefined && (lifts?.value(entry) ?? 0) > 0);
  return row && lifts?.value(row);
}

function missingOf(port: Port): readonly string[] {
  return [
    ...(port.valve === undefined ? ["valve"] : []),
    ...(port.seat === undefined ? ["seat"] : port.seat.width === undefined ? ["the seat's width"] : []),
    ...(port.throat === undefined ? ["throat"] : []),
    ...(port.stem === undefined ? ["stem"] : []),
  ];
}
