// The machine output of `bench`, as the schema from which its JSON Schema is published.
import * as z from "zod/mini";
import { SCHEMA_VERSION } from "./schema-version.ts";

const count = z.int().check(z.nonnegative());
/** `value` in `unit`, and the same in SI. */
const quantity = z.strictObject({ value: z.number(), unit: z.string(), si: z.number() });
/** A bare number: 0.01 is 1 %. */
const share = z.number();

/** From `from` to below `to`; a class of one value has both the same. */
const settleClass = z.strictObject({
  from: quantity,
  to: quantity,
  readings: count,
  median: quantity,
  slowest: quantity,
});

const settle = z.strictObject({
  readings: count,
  median: quantity,
  slowest: quantity,
  byLift: z.array(settleClass),
  byFlow: z.array(settleClass),
});

/** Shares of the time of all timed runs of the side. */
const sweep = z.strictObject({
  side: z.enum(["intake", "exhaust"]),
  runs: count,
  rows: z.number(),
  median: quantity,
  longest: quantity,
  perRow: quantity,
  shares: z.strictObject({
    low: share,
    middle: share,
    high: share,
    repeats: share,
    voids: share,
    afterSettling: z.nullable(share),
  }),
});

const repeatability = z.strictObject({
  deviation: share,
  degreesOfFreedom: count,
  low: share,
  high: share,
  cells: count,
  plateCells: count,
  claimed: z.nullable(share),
  verdict: z.nullable(z.enum(["kept", "repeats-worse", "repeats-better"])),
});

const reproducibility = z.strictObject({
  deviation: share,
  between: share,
  within: share,
  levels: count,
  subjects: count,
  sessions: count,
  widest: z.strictObject({ range: share, subject: z.string(), lift: quantity }),
});

const plate = z.strictObject({
  plate: z.string(),
  checks: z.array(
    z.strictObject({
      file: z.string(),
      date: z.nullable(z.string()),
      readings: count,
      difference: share,
      uncertainty: z.nullable(share),
      en: z.nullable(z.number()),
      outsideLimits: z.boolean(),
    }),
  ),
  limits: z.nullable(z.strictObject({ centre: share, low: share, high: share, movingRange: share })),
  drift: z.nullable(z.strictObject({ perYear: share, halfWidth: share, resolved: z.boolean() })),
});

const leak = z.strictObject({
  depression: quantity,
  median: quantity,
  largest: quantity,
  readings: z.array(
    z.strictObject({
      file: z.string(),
      date: z.nullable(z.string()),
      port: z.nullable(z.string()),
      flow: quantity,
    }),
  ),
});

const duty = z.strictObject({ from: quantity, to: quantity, readings: count, median: share, highest: share });

const bench = z.strictObject({
  id: z.string(),
  title: z.nullable(z.string()),
  records: count,
  runs: count,
  readings: count,
  first: z.nullable(z.string()),
  last: z.nullable(z.string()),
  settle: z.nullable(settle),
  sweeps: z.array(sweep),
  repeatability: z.nullable(repeatability),
  reproducibility: z.nullable(reproducibility),
  plates: z.array(plate),
  leak: z.nullable(leak),
  duty: z.array(duty),
  suggestions: z.array(
    z.strictObject({
      keyword: z.enum(["repeat", "settle", "quick", "within"]),
      line: z.nullable(z.string()),
      reason: z.string(),
    }),
  ),
});

/** `bench --format json`. */
export const benchReportSchema = z.strictObject({
  schemaVersion: z.literal(SCHEMA_VERSION),
  benches: z.array(bench),
});

export type BenchDocument = z.infer<typeof benchReportSchema>;
export type BenchEntry = z.infer<typeof bench>;
