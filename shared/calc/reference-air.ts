// "Standard air" means a dozen things that differ by a tenth in density: the ones with a name stand here.

import type { MoistAir } from "./moist-air.ts";

/** A reference air: the `name` a record writes, its state, and the `source` that defines it. */
export interface ReferenceAir {
  readonly name: string;
  readonly air: MoistAir;
  readonly source: string;
}

function dry(temperature: number, pressure: number): MoistAir {
  return { temperature, pressure, humidity: 0 };
}

/** Every named reference air, in the order in which lists show them. All are dry. */
export const referenceAirs: readonly ReferenceAir[] = [
  {
    name: "isa",
    air: dry(288.15, 101325),
    source: "ISO 2533, standard atmosphere at sea level: 15 degC, 101325 Pa",
  },
  {
    name: "iso-13443",
    air: dry(288.15, 101325),
    source: "ISO 13443, natural gas standard reference conditions: 15 degC, 101325 Pa",
  },
  { name: "din-1343", air: dry(273.15, 101325), source: "DIN 1343, Normzustand: 0 degC, 101325 Pa" },
  {
    name: "iupac-stp",
    air: dry(273.15, 100000),
    source: "IUPAC Gold Book S05910, STP since 1982: 0 degC, 100000 Pa",
  },
  {
    name: "dry-20C",
    air: dry(293.15, 101325),
    source: "40 CFR 1066, standard temperature and pressure: 20 degC, 101325 Pa",
  },
  {
    name: "sae-j607",
    air: dry((60 + 459.67) / 1.8, 29.92 * 3386.38864),
    source: "SAE J607: 60 degF, 29.92 inHg",
  },
  {
    name: "sae-j1349",
    air: dry(298.15, 99000),
    source: "SAE J1349: 25 degC, 99000 Pa of dry air",
  },
  { name: "iso-1585", air: dry(298, 99000), source: "ISO 1585: 298 K, 99000 Pa of dry air" },
];

/** The reference air of exactly this name, `undefined` if there is none. */
export function findReferenceAir(name: string): ReferenceAir | undefined {
  return referenceAirs.find((reference) => reference.name === name);
}
