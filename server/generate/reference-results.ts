// The part of the reference that lists what is computed for a reading, and the areas that its coefficients stand on.
import { POINT_CALCULATIONS } from "../../shared/calc/points/index.ts";
import { PORT_AREAS } from "../../shared/calc/port-areas.ts";
import { anchor, code, table } from "./markdown.ts";

/** Every calculation with its formula and source, and every area with what a port must state for it. */
export function resultsReference(): string {
  const calculations = POINT_CALCULATIONS.map(({ id, title, doc, source }) => [
    `${anchor(`result-${id}`)}${title}`,
    code(id),
    doc,
    source,
  ]);
  const areas = PORT_AREAS.map(({ name, needs, doc }) => [
    `${anchor(`area-${name}`)}${name}`,
    needs.map((keyword) => `[${keyword}](#line-${keyword})`).join(", "),
    doc,
  ]);
  return [
    `${anchor("results")}\n\n## Results`,
    "All of these are computed for every reading that is not void. What cannot be computed is left out, never guessed.",
    table(["result", "name in JSON", "meaning", "formula and source"], calculations),
    "A discharge coefficient is an effective area over one of these areas. Its name always says which.",
    table(["area", "the port states", "meaning"], areas),
  ].join("\n\n");
}
