// The air of the day.

import { present } from "../../shared/model/present.ts";
import { type Misfit, property } from "../directive.ts";
import { after, optional, quantity } from "../slots.ts";

export const air = property({
  keyword: "air",
  within: ["session", "run"],
  anyOrder: true,
  slots: {
    temperature: optional(quantity("temperature")),
    pressure: optional(quantity("pressure")),
    humidity: optional(quantity("humidity")),
    dewPoint: after("dew-point", optional(quantity("temperature"))),
    wetBulb: after("wet-bulb", optional(quantity("temperature"))),
    altimeter: after("altimeter", optional(quantity("pressure"))),
    elevation: after("elevation", optional(quantity("length"))),
  },
  doc: "Air of the day: temperature, station pressure and relative humidity in any order. Instead of humidity a dew point or a wet bulb; instead of station pressure an altimeter setting with the elevation. An elevation beside a station pressure is a check on it.",
  example: "air 71.5 degF 29.18 inHg 42 %RH",
  misfits: (values) => {
    const misfits: Misfit[] = [];
    const { temperature, pressure, humidity, dewPoint, wetBulb, altimeter, elevation } = values;
    if (temperature === undefined) misfits.push({ missing: "a temperature" });
    if (pressure === undefined && altimeter === undefined) misfits.push({ missing: "a station pressure" });
    if (altimeter !== undefined && elevation === undefined)
      misfits.push({ missing: "a length with its unit behind 'elevation'" });
    if (altimeter !== undefined && pressure !== undefined) misfits.push({ extra: "altimeter" });
    if (humidity !== undefined && dewPoint !== undefined) misfits.push({ extra: "dewPoint" });
    if ((humidity ?? dewPoint) !== undefined && wetBulb !== undefined) misfits.push({ extra: "wetBulb" });
    return misfits;
  },
  lower: (values, into) => {
    into.air = present(values);
  },
});
