// The closed set of dimensions that a value in a record can have: the format has no unit arithmetic and needs no more.

/** What a quantity measures. A slot or a column asks for one of these, a unit offers one or two of them. */
export type Dimension =
  | "length"
  | "area"
  | "volume"
  | "pressure"
  | "flow"
  | "mass-flow"
  | "temperature"
  | "time"
  | "angle"
  | "speed"
  | "rotation"
  | "torque"
  | "signal"
  | "ratio"
  | "humidity";

const NAMES: Readonly<Record<Dimension, string>> = {
  length: "a length",
  area: "an area",
  volume: "a volume",
  pressure: "a pressure",
  flow: "a volume flow",
  "mass-flow": "a mass flow",
  temperature: "a temperature",
  time: "a time",
  angle: "an angle",
  speed: "a speed",
  rotation: "a rotational speed",
  torque: "a torque",
  signal: "a meter signal",
  ratio: "a ratio",
  humidity: "a relative humidity",
};

/** The dimension in words with its article, for messages: `"a volume flow"`. */
export function dimensionName(dimension: Dimension): string {
  return NAMES[dimension];
}
