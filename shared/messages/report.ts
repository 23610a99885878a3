// The machine output of the command: one schema for each report, from which its JSON Schema is published.
import * as z from "zod/mini";
import { POINT_CALCULATIONS } from "../calc/points/index.ts";
import { SCHEMA_VERSION } from "./schema-version.ts";

const count = z.int().check(z.nonnegative());
/** Lines and columns count from 1, columns in UTF-16 units. */
const position = z.int().check(z.positive());

/** `value` in `unit`, and the same in SI. */
const quantity = z.strictObject({ value: z.number(), unit: z.string(), si: z.number() });

export type ReportQuantity = z.infer<typeof quantity>;

// --- table ----------------------------------------------------------------------------------------------

type CalculatedSchema = z.ZodMiniType<unknown>;

/** What the calculations put into a point; those with a dot in their id stand in a group. */
function calculatedShape(): Record<string, CalculatedSchema> {
  const shape = new Map<string, CalculatedSchema>();
  const groups = new Map<string, Record<string, CalculatedSchema>>();
  for (const { id, dimension, gives } of POINT_CALCULATIONS) {
    const value: CalculatedSchema = z.nullable(dimension === "none" ? z.number() : quantity);
    const schema = gives === "record" ? z.record(z.string(), value) : value;
    const [key = id, member] = id.split(".");
    if (member === undefined) {
      shape.set(key, schema);
      continue;
    }
    const group = { ...groups.get(key), [member]: schema };
    groups.set(key, group);
    shape.set(key, z.strictObject(group));
  }
  return Object.fromEntries(shape);
}

/** The type of a point knows what is written in a row; the schema also what the list of calculations adds. */
const point = z.strictObject({
  line: position,
  void: z.boolean(),
  lift: z.nullable(quantity),
  depression: z.nullable(quantity),
  ...calculatedShape(),
  settle: z.nullable(quantity),
  findings: z.array(z.string()),
});

const bands = z.strictObject({ low: quantity, middle: quantity, high: quantity });

const summary = z.strictObject({
  peak: z.nullable(z.strictObject({ lift: quantity, flow: quantity })),
  mean: z.nullable(quantity),
  bands: z.nullable(bands),
  eventMean: z.nullable(quantity),
  time: z.nullable(quantity),
  /** Why there is no mean over the event of a cam that is known. */
  problems: z.array(z.string()),
});

const run = z.strictObject({
  id: z.string(),
  title: z.nullable(z.string()),
  port: z.nullable(z.string()),
  side: z.nullable(z.enum(["intake", "exhaust"])),
  cylinder: z.nullable(z.number()),
  stage: z.nullable(z.string()),
  bench: z.nullable(z.string()),
  date: z.nullable(z.string()),
  direction: z.enum(["draws", "blows"]),
  target: quantity,
  quote: quantity,
  reference: z.nullable(z.string()),
  air: z.strictObject({ density: quantity, temperature: quantity, pressure: quantity }),
  points: z.array(point),
  summary,
});

/** Shares of the certified flow are bare numbers: 0.01 is 1 %. */
const plateCheck = z.strictObject({
  line: position,
  plate: z.nullable(z.string()),
  bench: z.nullable(z.string()),
  date: z.nullable(z.string()),
  certified: z.nullable(quantity),
  depression: z.nullable(quantity),
  reference: z.nullable(z.string()),
  readings: count,
  flow: z.nullable(quantity),
  difference: z.nullable(z.number()),
  uncertainty: z.nullable(z.number()),
  en: z.nullable(z.number()),
  agrees: z.nullable(z.boolean()),
  findings: z.array(z.string()),
});

/** A number of a fit and its standard error, in the units of the record and in SI; `null` where the samples do not tell it. */
const fitted = z.nullable(z.strictObject({ value: quantity, error: quantity }));
const fittedNumber = z.nullable(z.strictObject({ value: z.number(), error: z.number() }));

const steadyMean = z.strictObject({
  mean: quantity,
  scatter: quantity,
  effective: z.number(),
  error: quantity,
});

const trace = z.strictObject({
  line: position,
  run: z.string(),
  lift: z.nullable(quantity),
  samples: count,
  settle: z.nullable(z.strictObject({ time: quantity, step: quantity })),
  overshoot: z.nullable(quantity),
  approach: z.nullable(
    z.strictObject({
      order: z.literal([1, 2]),
      deadTime: fitted,
      timeConstant: fitted,
      /** rad/s. */
      naturalFrequency: fittedNumber,
      damping: fittedNumber,
      scatter: quantity,
    }),
  ),
  steady: z.nullable(
    z.strictObject({
      from: quantity,
      to: quantity,
      samples: count,
      depression: steadyMean,
      flow: z.nullable(steadyMean),
    }),
  ),
  steps: z.array(
    z.strictObject({
      kind: z.enum(["let-go", "re-attached"]),
      time: quantity,
      depression: quantity,
      phase: z.enum(["rising", "holding", "falling"]),
      size: z.number(),
      error: z.number(),
      before: quantity,
      after: quantity,
      chance: z.number(),
    }),
  ),
  problems: z.array(z.string()),
});

const ladder = z.strictObject({
  line: position,
  run: z.string(),
  lift: z.nullable(quantity),
  points: z.array(
    z.strictObject({ line: position, depression: quantity, flow: quantity, uncertainty: z.number() }),
  ),
  exponent: z.nullable(z.strictObject({ value: z.number(), error: z.number(), allowance: z.number() })),
  nozzle: z.nullable(z.number()),
  kink: z.nullable(
    z.strictObject({ depression: quantity, below: z.number(), above: z.number(), chance: z.number() }),
  ),
  verdict: z.nullable(z.enum(["as-expected", "steep", "flat", "kinked"])),
});

/** `table --format json`. */
export const tableReportSchema = z.strictObject({
  schemaVersion: z.literal(SCHEMA_VERSION),
  file: z.string(),
  runs: z.array(run),
  plateChecks: z.array(plateCheck),
  traces: z.array(trace),
  ladders: z.array(ladder),
});

export type TableReport = z.infer<typeof tableReportSchema>;
export type TableRun = z.infer<typeof run>;
export type TablePlateCheck = z.infer<typeof plateCheck>;
export type TablePoint = z.infer<typeof point>;
export type TableTrace = z.infer<typeof trace>;
export type TableLadder = z.infer<typeof ladder>;

// --- check ----------------------------------------------------------------------------------------------

const place = z.strictObject({ line: position, column: position });
/** `end` is exclusive. */
const range = z.strictObject({ start: place, end: place });

const finding = z.strictObject({
  file: z.string(),
  range,
  code: z.string(),
  severity: z.enum(["error", "warning", "hint"]),
  message: z.string(),
  help: z.string(),
  related: z.array(z.strictObject({ file: z.string(), range, message: z.string() })),
  fix: z.nullable(
    z.strictObject({ title: z.string(), edits: z.array(z.strictObject({ range, text: z.string() })) }),
  ),
});

/** `check --format json`. */
export const checkReportSchema = z.strictObject({
  schemaVersion: z.literal(SCHEMA_VERSION),
  findings: z.array(finding),
  summary: z.strictObject({ files: count, errors: count, warnings: count, hints: count }),
});

export type CheckReport = z.infer<typeof checkReportSchema>;
export type CheckFinding = z.infer<typeof finding>;

// --- published schemas ----------------------------------------------------------------------------------

/** The JSON Schema (draft 2020-12) of each report, by the name of the command that prints it. */
export function reportJsonSchemas(): Readonly<Record<"table" | "check", object>> {
  return { table: z.toJSONSchema(tableReportSchema), check: z.toJSONSchema(checkReportSchema) };
}
