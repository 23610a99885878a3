// The steps of a ladder as a table.
import type { LadderResult } from "../model/ladder-result.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { ladderUnits } from "./ladder-units.ts";
import { evenly, type NumbersTable, numbers } from "./numbers-table.ts";
import { shownNumber, shownUncertainty } from "./shown-number.ts";
import { titleOf } from "./table-blocks.ts";
import type { WantedUnits } from "./wanted-units.ts";

export function ladderTable(result: LadderResult, wanted: WantedUnits = []): NumbersTable {
  const { ladder, setup, points, law } = result;
  const units = ladderUnits(result, wanted);
  const flowIn = (flow: number) => fromSI(flow, units.flow);
  return {
    title: titleOf("ladder", ladder.lift, setup.run.id),
    head: "flow at each depression; ±U: two standard uncertainties",
    columns: [
      numbers(
        "depression",
        units.depression.symbol,
        evenly(points.map(({ depression }) => fromSI(depression, units.depression))),
      ),
      numbers(
        "flow",
        units.flow.symbol,
        points.map(({ flow, uncertainty }) => shownNumber(flowIn(flow), 2 * uncertainty)),
      ),
      numbers(
        "±U",
        units.flow.symbol,
        points.map(({ flow, uncertainty }) => shownUncertainty(flowIn(flow) * 2 * uncertainty)),
      ),
      ...(law === undefined
        ? []
        : [
            numbers(
              "off the square root law",
              "%",
              points.map(({ depression, flow }) =>
                signedPercent(Math.log(flow) - law.level - 0.5 * Math.log(depression / law.middle)),
              ),
            ),
          ]),
    ],
    lines: points.map(({ row }) => row.line),
    more: 0,
  };
}

/** A small relative difference, with its sign. */
export function signedPercent(share: number): string {
  const text = formatFixed(100 * share, 1);
  return Number(text) > 0 ? `+${text}` : text;
}
