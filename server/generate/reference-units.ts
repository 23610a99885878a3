// The part of the reference that lists units and named reference airs with their sources.
import { referenceAirs } from "../../shared/calc/reference-air.ts";
import { type Dimension, dimensionName } from "../../shared/quantity/dimension.ts";
import type { Unit } from "../../shared/quantity/unit.ts";
import { UNITS } from "../../shared/quantity/units.ts";
import { anchor, code, table } from "./markdown.ts";

const FIGURES = 10;

/** A number without the digits that binary arithmetic adds. */
function plain(value: number): string {
  return String(Number(value.toPrecision(FIGURES)));
}

/** A name for a unit that can stand in the address of a link. */
export function unitAnchor(symbol: string): string {
  const words = symbol.replaceAll("/", "-per-").replaceAll("%", "percent").replaceAll(/[@.]/g, "-");
  return `unit-${words}`;
}

/** Units by dimension; a unit of two dimensions has its anchor where it stands first. */
export function unitsReference(): string {
  const dimensions = [...new Set(UNITS.flatMap((unit) => unit.dimensions))];
  const intro = `Write the spelling in the first column. Those of the last are read too and come with a fix, as do other cases
of letters, \`°\` for \`deg\`, and raised or lowered digits. The value in SI is the written one times the factor; for a
temperature, (written + offset) times the factor. A signal in mA or Hz cannot be set against a table in V.`;
  const seen = new Set<Unit>();
  const sections = dimensions.map((dimension) => {
    const rows = UNITS.filter((unit) => unit.dimensions.includes(dimension)).map((unit) => {
      const place = seen.has(unit) ? "" : anchor(unitAnchor(unit.symbol));
      seen.add(unit);
      return unitRow(unit, place);
    });
    const head = ["unit", "factor", "SI", "source", "also read"];
    return `### ${titleOf(dimension)}\n\n${table(head, rows)}`;
  });
  return [`${anchor("units")}\n\n## Units`, intro, ...sections].join("\n\n");
}

function unitRow({ symbol, names, si, factor, offset, source }: Unit, place: string): string[] {
  return [
    place + code(symbol),
    offset === 0 ? plain(factor) : `${plain(factor)} (offset ${plain(offset)})`,
    si,
    source,
    names.map(code).join(" "),
  ];
}

function titleOf(dimension: Dimension): string {
  const name = dimensionName(dimension).replace(/^an? /, "");
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** Every named reference air with its state and the document that defines it. */
export function airsReference(): string {
  const rows = referenceAirs.map(({ name, air, source }) => [
    `${anchor(`air-${name}`)}${code(name)}`,
    `${plain(air.temperature)} K`,
    `${plain(air.pressure)} Pa`,
    source,
  ]);
  const intro = `"Standard air" means many things. A record names the one it means, or writes out a temperature and a pressure, and a
humidity if it matters. All of these are dry.`;
  return [
    `${anchor("airs")}\n\n## Reference airs`,
    intro,
    table(["name", "temperature", "pressure", "source"], rows),
  ].join("\n\n");
}
