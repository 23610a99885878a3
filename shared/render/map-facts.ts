// What a velocity map gives, in words, as picture and preview say it.
import type { MapResult } from "../calc/velocity-map.ts";
import type { VelocityMap } from "../model/model.ts";
import { formatFixed } from "../quantity/digits.ts";
import { fromSI } from "../quantity/unit.ts";
import { mapUnits } from "./map-units.ts";
import type { Fact } from "./run-facts.ts";
import { quantityIn, type WantedUnits } from "./wanted-units.ts";

export function mapTitle({ title, of }: VelocityMap): string {
  return title ?? `map of ${of?.id ?? "no run"}`;
}

/** Tells a map from the others of its file. */
export function mapName({ title, of }: VelocityMap): string {
  return [`map of ${of?.id ?? "no run"}`, ...(title === undefined ? [] : [title])].join(": ");
}

/** Where the probe stood and what its speeds come to. */
export function mapFacts(
  map: VelocityMap,
  { points, statistics }: MapResult,
  wanted: WantedUnits = [],
): readonly Fact[] {
  const { lift, depression } = map;
  const units = mapUnits(map, wanted);
  const stated = [
    ...(lift === undefined ? [] : [`lift ${quantityIn(lift, wanted)}`]),
    ...(depression === undefined ? [] : [`at ${quantityIn(depression, wanted)}`]),
  ];
  const places: Fact = { label: "places", words: [`${points.length}`, ...stated].join(", ") };
  if (statistics === undefined) return [places];
  const { mean, peak, uniformity, dead } = statistics;
  const speed = (value: number) => `${formatFixed(fromSI(value, units.speed), 0)} ${units.speed.symbol}`;
  const at = `x ${tidy(fromSI(peak.x, units.place))}, y ${tidy(fromSI(peak.y, units.place))} ${units.place.symbol}`;
  const slow = Math.round(dead * points.length);
  return [
    places,
    { label: "mean", words: speed(mean) },
    { label: "peak", words: `${speed(peak.speed)} at ${at}` },
    { label: "uniformity", words: `${formatFixed(uniformity, 3)}, 1 where all places are alike` },
    { label: "below half the mean", words: `${slow === 0 ? "no place" : slow} of ${points.length}` },
  ];
}

/** What a reader asks for first. */
export function mapSummary(map: VelocityMap, result: MapResult, wanted: WantedUnits = []): readonly string[] {
  const words = (label: string) => mapFacts(map, result, wanted).find((fact) => fact.label === label)?.words;
  return result.statistics === undefined
    ? []
    : [
        `mean ${words("mean")}`,
        `peak ${words("peak")}`,
        `${words("below half the mean")} below half the mean`,
      ];
}

/** At most three digits, no zeros behind them. */
export function tidy(value: number): string {
  return String(Number(value.toPrecision(3)));
}
