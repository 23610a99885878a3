// The machine output of `compare`, as the schema from which its JSON Schema is published.
import * as z from "zod/mini";
import { SCHEMA_VERSION } from "./schema-version.ts";

/** `value` in `unit`, and the same in SI. */
const quantity = z.strictObject({ value: z.number(), unit: z.string(), si: z.number() });
/** A bare number: 0.01 is 1 %. */
const share = z.number();

const side = z.strictObject({
  file: z.string(),
  revision: z.nullable(z.string()),
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
});

/** A condition in which the two differ, as each states it. */
const mismatch = z.strictObject({
  what: z.enum(["side", "direction", "target", "quote", "reference", "adapter", "entry", "stub", "valve"]),
  run: z.string(),
  baseline: z.string(),
});

/** `isRead` is false for a flow that lies between two readings. */
const flow = z.strictObject({ value: z.number(), unit: z.string(), si: z.number(), isRead: z.boolean() });

/** `chance` is what two measurements of one port differ by in 95 % of cases at most, relative. */
const gain = z.strictObject({ gain: share, chance: share, resolved: z.boolean() });

const lift = z.strictObject({
  lift: quantity,
  branch: z.enum(["rising", "falling"]),
  baseline: z.nullable(flow),
  run: z.nullable(flow),
  difference: z.nullable(quantity),
  gain: z.nullable(gain),
});

const mean = z.strictObject({
  from: quantity,
  to: quantity,
  baseline: quantity,
  run: quantity,
  ...gain.shape,
});

const approach = z.strictObject({
  settle: z.nullable(z.strictObject({ least: quantity, median: quantity, longest: quantity })),
  time: z.nullable(quantity),
});

/** Ratios are of the run's bench over the baseline's; uncertainties are expanded (k = 2) and relative. */
const benches = z.strictObject({
  scale: z.nullable(
    z.strictObject({
      ratio: z.number(),
      uncertainty: share,
      lifts: z.int(),
      stated: z.nullable(share),
      en: z.nullable(z.number()),
    }),
  ),
  lifts: z.array(
    z.strictObject({
      lift: quantity,
      isRead: z.boolean(),
      en: z.nullable(z.number()),
      leftOver: z.nullable(share),
      chance: share,
    }),
  ),
  hidden: z.array(
    z.strictObject({
      onset: quantity,
      deepest: quantity,
      depth: share,
      resolvedBy: z.enum(["baseline", "run"]),
      isFlatThere: z.boolean(),
    }),
  ),
  approaches: z.strictObject({ baseline: approach, run: approach }),
});

const comparison = z.strictObject({
  run: side,
  comparable: z.boolean(),
  /** Readings of the run that are the baseline's own: of one run at two revisions. Chance is 0 for these. */
  sameReadings: z.int().check(z.nonnegative()),
  mismatches: z.array(mismatch),
  differs: z.boolean(),
  lifts: z.array(lift),
  mean: z.nullable(mean),
  bands: z.nullable(z.strictObject({ low: mean, middle: mean, high: mean })),
  benches: z.nullable(benches),
});

/** `compare --format json`. */
export const compareReportSchema = z.strictObject({
  schemaVersion: z.literal(SCHEMA_VERSION),
  baseline: side,
  comparisons: z.array(comparison),
});

export type CompareReport = z.infer<typeof compareReportSchema>;
export type CompareSide = z.infer<typeof side>;
export type CompareEntry = z.infer<typeof comparison>;
