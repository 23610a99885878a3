// Settles the air of the day: from what was written to temperature, station pressure, humidity and density.
import type { AirName, StatedAir } from "../model/model.ts";
import type { AirState, NamedAir } from "../model/setup.ts";
import { humidityFromDewPoint, humidityFromWetBulb } from "./humidity.ts";
import { airDensity } from "./moist-air.ts";
import { findReferenceAir } from "./reference-air.ts";
import { stationPressure } from "./station-pressure.ts";

/** Standard uncertainties of a shop's air readings (common practice, no published source). */
const TEMPERATURE_UNCERTAINTY = 0.3; // K, also of dew point and wet bulb
const PRESSURE_UNCERTAINTY = 50; // Pa
const HUMIDITY_UNCERTAINTY = 0.05; // of saturation

/** Air outside these bounds is a slip: no shop has it, and the density equation is far from its range. */
const COLDEST = 223.15; // K
const HOTTEST = 343.15; // K
const LOWEST_PRESSURE = 30_000; // Pa
const HIGHEST_PRESSURE = 120_000; // Pa

/** The written values in SI; what was not written is `undefined`. */
interface Written {
  readonly temperature: number;
  readonly pressure: number | undefined;
  readonly altimeter: number | undefined;
  readonly elevation: number | undefined;
  readonly humidity: number | undefined;
  readonly dewPoint: number | undefined;
  readonly wetBulb: number | undefined;
}

/**
 * The state of stated air. Without humidity it is taken as dry. `undefined` without a temperature or a pressure (an
 * altimeter setting needs its elevation), and for air that no shop can have. The uncertainty of the density is that of
 * the usual shop instruments, by the law of propagation (JCGM 100:2008, 5.1.2).
 */
export function airState(stated: StatedAir): AirState | undefined {
  const known = settled.get(stated);
  if (known !== undefined) return known;
  const written = inSI(stated);
  const state = written && stateOf(written);
  if (written === undefined || state === undefined) return undefined;
  const air = new ReadAir(state, written);
  settled.set(stated, air);
  return air;
}

/** Air that was read on instruments; what its density is uncertain by costs several times the density and is seldom asked for. */
class ReadAir implements AirState {
  readonly temperature: number;
  readonly pressure: number;
  readonly humidity: number;
  readonly density: number;
  readonly #written: Written;
  #uncertainty: number | undefined = undefined;

  constructor(
    { temperature, pressure, humidity, density }: Omit<AirState, "densityUncertainty">,
    written: Written,
  ) {
    this.temperature = temperature;
    this.pressure = pressure;
    this.humidity = humidity;
    this.density = density;
    this.#written = written;
  }

  get densityUncertainty(): number {
    this.#uncertainty ??= densityUncertainty(this.#written);
    return this.#uncertainty;
  }
}

/** One air line serves all runs of a session, and its density is worth remembering. */
const settled = new WeakMap<StatedAir, AirState>();

/** The air that a name stands for, or that is written out in its place; `undefined` for an unknown name. */
export function namedAir(air: AirName): NamedAir | undefined {
  if ("name" in air) {
    const found = findReferenceAir(air.name);
    return found && { name: found.name, state: byDefinition(found.air) };
  }
  const state = airState(air);
  if (state === undefined) return undefined;
  const words = [air.temperature, air.pressure, air.humidity].flatMap((q) =>
    q === undefined ? [] : [`${q.text} ${q.unit.symbol}`],
  );
  return { name: words.join(" "), state: byDefinition(state) };
}

function byDefinition(air: Pick<AirState, "temperature" | "pressure" | "humidity">): AirState {
  const { temperature, pressure, humidity } = air;
  return { temperature, pressure, humidity, density: airDensity(air), densityUncertainty: 0 };
}

/** What a session without an air line is computed in. */
export const defaultAir: AirState = new ReadAir(
  byDefinition({ temperature: 288.15, pressure: 101_325, humidity: 0 }),
  {
    temperature: 288.15,
    pressure: 101_325,
    altimeter: undefined,
    elevation: undefined,
    humidity: 0,
    dewPoint: undefined,
    wetBulb: undefined,
  },
);

function inSI(stated: StatedAir): Written | undefined {
  if (stated.temperature === undefined) return undefined;
  return {
    temperature: stated.temperature.value,
    pressure: stated.pressure?.value,
    altimeter: stated.altimeter?.value,
    elevation: stated.elevation?.value,
    humidity: stated.humidity?.value,
    dewPoint: stated.dewPoint?.value,
    wetBulb: stated.wetBulb?.value,
  };
}

function stateOf(written: Written): Omit<AirState, "densityUncertainty"> | undefined {
  const { temperature } = written;
  const pressure = pressureOf(written);
  if (pressure === undefined || !isBetween(temperature, COLDEST, HOTTEST)) return undefined;
  if (!isBetween(pressure, LOWEST_PRESSURE, HIGHEST_PRESSURE)) return undefined;
  const humidity = humidityOf(written, pressure);
  if (!isBetween(humidity, 0, 1)) return undefined;
  const density = airDensity({ temperature, pressure, humidity });
  return { temperature, pressure, humidity, density };
}

function pressureOf({ pressure, altimeter, elevation }: Written): number | undefined {
  if (pressure !== undefined) return pressure;
  return altimeter === undefined || elevation === undefined
    ? undefined
    : stationPressure(altimeter, elevation);
}

function humidityOf({ temperature, humidity, dewPoint, wetBulb }: Written, pressure: number): number {
  if (humidity !== undefined) return humidity;
  if (dewPoint !== undefined) return humidityFromDewPoint(dewPoint, temperature) ?? Number.NaN;
  if (wetBulb !== undefined) return humidityFromWetBulb(wetBulb, temperature, pressure) ?? Number.NaN;
  return 0;
}

function densityUncertainty(written: Written): number {
  const steps: (readonly [keyof Written, number])[] = [
    ["temperature", TEMPERATURE_UNCERTAINTY],
    [written.pressure === undefined ? "altimeter" : "pressure", PRESSURE_UNCERTAINTY],
    written.humidity === undefined && written.dewPoint !== undefined
      ? ["dewPoint", TEMPERATURE_UNCERTAINTY]
      : written.humidity === undefined && written.wetBulb !== undefined
        ? ["wetBulb", TEMPERATURE_UNCERTAINTY]
        : ["humidity", HUMIDITY_UNCERTAINTY],
  ];
  const terms = steps.map(([name, u]) => (densityAt(written, name, u) - densityAt(written, name, -u)) / 2);
  return Math.hypot(...terms);
}

function densityAt(written: Written, name: keyof Written, change: number): number {
  const moved = { ...written, [name]: (written[name] ?? 0) + change };
  const pressure = pressureOf(moved) ?? Number.NaN;
  return airDensity({ temperature: moved.temperature, pressure, humidity: humidityOf(moved, pressure) });
}

function isBetween(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}
