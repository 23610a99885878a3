// A bench that does not read a check plate as its certificate says.
import { namedAir } from "../../shared/calc/air-state.ts";
import type { Plate } from "../../shared/model/model.ts";
import { shifted } from "../../shared/text/span.ts";
import { plateChecksOf } from "../analysis/plate-checks.ts";
import { BARE_SESSION } from "./examples.ts";
import { rule } from "./rule.ts";
import { inUnit, percent, written } from "./words.ts";

const CHECKED = `${BARE_SESSION}plate p2000
  flow       270.2 cfm at 28 inH2O in isa
  uncertainty 0.6 %
plate-check p2000
  depression[inH2O]  flow[cfm]
`;

export const plateOff = rule<{
  plate: string;
  bench: string;
  off: string;
  side: string;
  read: string;
  certified: string;
  limit: string;
  en: string;
  scaling: string;
}>({
  code: "plate-off",
  severity: "warning",
  message: ({ plate, bench, off, side, read, certified, limit, en }) =>
    `bench '${bench}' reads plate '${plate}' ${off} ${side} (${read} for ${certified}); the two are known to ${limit} together (En ${en})`,
  help: ({ scaling }) =>
    scaling === ""
      ? "seat the plate, warm the bench, look at zero, range and leak, and read it again; if it stays, flow no port before the bench is calibrated"
      : `hold the certificate's own depression: this was scaled by ${scaling}, and the root of the depression does not carry a plate so far`,
  what: "A check plate's readings differ from its certificate by more than their combined expanded uncertainty (|En| above 1).",
  why: "What is wrong with a known plate is wrong with every port that is flowed on this bench.",
  bad: `${CHECKED}               28.0      281.5
               28.0      281.9
`,
  good: `${CHECKED}               28.0      275.2
               28.0      274.8
`,
  check(input, report) {
    const { scope, limits } = input;
    for (const { placed, result } of plateChecksOf(input)) {
      const { plate, comparison, setup, rows } = result;
      if (plate?.flow === undefined || comparison?.uncertainty === undefined) continue;
      if (!(Math.abs(comparison.difference) > comparison.uncertainty)) continue;
      const { flow, depression } = plate.flow;
      const ratios = rows.flatMap((row) => (row.depression ? [depression.value / row.depression] : []));
      const furthest = ratios.reduce((most, ratio) => (spread(ratio) > spread(most) ? ratio : most), 1);
      const far = spread(furthest) > limits.scaling * (1 + 1e-9);
      const args = {
        plate: plate.id,
        bench: setup.bench?.id ?? "",
        off: percent(Math.abs(comparison.difference)),
        side: comparison.difference > 0 ? "high" : "low",
        read: inUnit(comparison.flow, flow.unit),
        certified: certificateWords(plate.flow),
        limit: percent(comparison.uncertainty),
        en: (comparison.difference / comparison.uncertainty).toFixed(1),
        scaling: far ? percent(Math.abs(Math.sqrt(furthest) - 1)) : "",
      };
      const home = scope.locate("plate", plate.id);
      const line = home && plate.origin.lines.get("flow");
      const file = home?.path === placed.path ? {} : { file: home?.path ?? placed.path };
      const related =
        home === undefined || line === undefined
          ? []
          : [{ ...file, span: shifted(line, home.start), message: "the certificate" }];
      report(shifted(placed.entity.origin.name, placed.start), args, { related });
    }
  },
});

function spread(ratio: number): number {
  return Math.max(ratio, 1 / ratio);
}

function certificateWords({ flow, depression, in: air }: NonNullable<Plate["flow"]>): string {
  const name = air && namedAir(air)?.name;
  return `${written(flow)} at ${written(depression)}${name === undefined ? "" : ` in ${name}`}`;
}
