// Draws a velocity map: the section of the port with its speeds, and beside it how they go with height.
import type { MapResult } from "../calc/velocity-map.ts";
import type { VelocityMap } from "../model/model.ts";
import { captionPanel } from "./chart-caption.ts";
import { CURSOR_PARAM, panelSpec, strongRows } from "./chart-layers.ts";
import { emptyChart, PADDING, pictureWidth, shellOf, type VegaLiteSpec } from "./chart-shell.ts";
import { cleanText } from "./chart-text.ts";
import { type ChartTheme, LIGHT_THEME } from "./chart-theme.ts";
import { listed } from "./chart-words.ts";
import { mapFacts, mapName, mapTitle } from "./map-facts.ts";
import { MAP_LEFT, mapFrame, PROFILE_GAP } from "./map-frame.ts";
import { mapProfile } from "./map-profile.ts";
import { drawnPlaces, mapSection } from "./map-section.ts";
import { type MapUnits, mapUnits } from "./map-units.ts";
import type { Fact } from "./run-facts.ts";
import { quantityIn, type WantedUnits } from "./wanted-units.ts";

export interface MapChartOptions {
  /** Of the whole picture, in pixels; 760 unless stated. */
  readonly width?: number;
  readonly theme?: ChartTheme;
  /** Units to show instead of the record's own, each for its dimension. */
  readonly units?: WantedUnits;
}

/**
 * The picture of one map, x across and y upwards in one scale. Discs have areas as the speeds and the deeper a colour the
 * quicker they are, with the speed beside them where there is room for all; places below half the mean are hollow. Where
 * the picture is wide enough each speed stands at its height once more, beside the section. Without a place that has a speed it says so.
 */
export function mapSpec(map: VelocityMap, result: MapResult, options: MapChartOptions = {}): VegaLiteSpec {
  const theme = options.theme ?? LIGHT_THEME;
  const outer = pictureWidth(options.width);
  const title = cleanText(mapTitle(map));
  const { statistics, points } = result;
  if (statistics === undefined) {
    return emptyChart("No place to draw: no row gives x, y and a speed", title, outer, theme);
  }
  const units = mapUnits(map, options.units);
  const { section: plot, profile: beside } = mapFrame(points, units.place, outer);
  const places = drawnPlaces(points, statistics, units, theme, mapName(map));
  const section = mapSection(places, statistics.peak, plot, units, theme);
  const profile =
    beside === undefined ? undefined : mapProfile(places, statistics, plot, beside, units, theme);
  const facts = mapFacts(map, result, options.units);
  const hasMeans = (profile?.data["profile-means"]?.length ?? 0) > 0;
  const notes = notesOf(facts, result, hasMeans);
  const caption = captionPanel(
    { left: MAP_LEFT, theme, width: plot.width },
    notes,
    notes,
    outer - 2 * PADDING,
  );
  const data = [section, ...(profile === undefined ? [] : [profile]), caption].flatMap((panel) =>
    Object.entries(panel.data),
  );
  const shell = shellOf(title, factsOf(map, result, units, options.units ?? []), outer, MAP_LEFT, theme);
  return {
    ...shell,
    spacing: { row: shell["spacing"], column: PROFILE_GAP },
    align: "none",
    params: [{ name: CURSOR_PARAM, value: "" }],
    datasets: Object.fromEntries(data.map(([name, rows]) => [name, strongRows(rows, theme)])),
    // All panels in one grid: a row of its own for the upper two would not be laid out by their plots.
    columns: profile === undefined ? 1 : 2,
    concat: [
      panelSpec({ ...section.panel, lift: `x, ${units.place.symbol}` }, theme),
      ...(profile === undefined
        ? []
        : [panelSpec({ ...profile.panel, lift: `Speed, ${units.speed.symbol}` }, theme)]),
      caption.spec,
    ],
  };
}

function factsOf(
  { of, lift, depression }: VelocityMap,
  { points }: MapResult,
  { speed }: MapUnits,
  wanted: WantedUnits,
): string {
  return listed([
    of && `run ${of.id}`,
    lift && `lift ${quantityIn(lift, wanted)}`,
    depression && `at ${quantityIn(depression, wanted)}`,
    `${points.length} places`,
    `speeds in ${speed.symbol}`,
  ]);
}

/** What the speeds come to, and how to read the discs. */
function notesOf(facts: readonly Fact[], { points, statistics }: MapResult, hasMeans: boolean): string {
  const said = facts.filter(({ label }) => ["mean", "peak", "uniformity"].includes(label));
  const slow = Math.round((statistics?.dead ?? 0) * points.length);
  return listed([
    ...said.map(({ label, words }) => `${label} ${words}`),
    slow > 0
      ? `hollow: below half the mean, ${slow} of ${points.length}`
      : `no place of ${points.length} below half the mean`,
    "the larger and the deeper, the quicker",
    hasMeans ? "line: the mean of each row" : undefined,
  ]);
}
