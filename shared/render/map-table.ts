// The places of a velocity map as a table.
import type { MapResult } from "../calc/velocity-map.ts";
import type { VelocityMap } from "../model/model.ts";
import { fromSI } from "../quantity/unit.ts";
import { mapName } from "./map-facts.ts";
import { mapUnits } from "./map-units.ts";
import { evenly, type NumbersTable, numbers } from "./numbers-table.ts";
import { shownNumber, shownRatio } from "./shown-number.ts";
import type { WantedUnits } from "./wanted-units.ts";

export function mapTable(
  map: VelocityMap,
  { points, statistics }: MapResult,
  wanted: WantedUnits = [],
): NumbersTable {
  const { place, speed: unit } = mapUnits(map, wanted);
  const mean = statistics?.mean;
  return {
    title: mapName(map),
    head: "",
    columns: [
      numbers("x", place.symbol, evenly(points.map(({ x }) => fromSI(x, place)))),
      numbers("y", place.symbol, evenly(points.map(({ y }) => fromSI(y, place)))),
      numbers(
        "speed",
        unit.symbol,
        points.map(({ speed }) => shownNumber(fromSI(speed, unit), undefined)),
      ),
      ...(mean === undefined
        ? []
        : [
            numbers(
              "of the mean",
              "",
              points.map(({ speed }) => shownRatio(speed / mean)),
            ),
          ]),
    ],
    lines: points.map(({ row }) => row.line),
    more: 0,
  };
}
