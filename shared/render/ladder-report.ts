// A ladder in the machine output of `table`.
import type { TableLadder } from "../messages/report.ts";
import type { LadderResult } from "../model/ladder-result.ts";
import { ladderUnits } from "./ladder-units.ts";
import { reported } from "./reported.ts";
import { rounded } from "./rounded.ts";
import type { AtLine } from "./table-input.ts";
import type { WantedUnits } from "./wanted-units.ts";

export function ladderReport({ line, result }: AtLine<LadderResult>, wanted: WantedUnits = []): TableLadder {
  const { ladder, setup, points, law, nozzle, allowance, kink, verdict } = result;
  const units = ladderUnits(result, wanted);
  return {
    line: line + 1,
    run: setup.run.id,
    lift: ladder.lift === undefined ? null : reported(ladder.lift.value, ladder.lift.unit),
    points: points.map((point) => ({
      line: line + point.row.line + 1,
      depression: reported(point.depression, units.depression),
      flow: reported(point.flow, units.flow),
      uncertainty: rounded(point.uncertainty),
    })),
    exponent:
      law === undefined
        ? null
        : { value: rounded(law.exponent), error: rounded(law.error), allowance: rounded(allowance) },
    nozzle: nozzle === undefined ? null : rounded(nozzle),
    kink:
      kink === undefined
        ? null
        : {
            depression: reported(kink.depression, units.depression),
            below: rounded(kink.below),
            above: rounded(kink.above),
            chance: rounded(kink.chance),
          },
    verdict: verdict ?? null,
  };
}
