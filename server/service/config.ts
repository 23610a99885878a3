// Reads headnote.json into the limits and severities that findings are judged by.
import type { Severity } from "../../shared/finding.ts";
import { type ConfigFile, configSchema } from "../../shared/messages/config.ts";
import { DEFAULT_LIMITS, type Limits } from "../../shared/model/limits.ts";
import type { Dimension } from "../../shared/quantity/dimension.ts";
import { nearest } from "../../shared/quantity/nearest.ts";
import { CODES } from "../catalogue.ts";
import { statedValue } from "./stated-value.ts";

export interface Config {
  readonly limits: Limits;
  readonly severity: ReadonlyMap<string, Severity | "off">;
}

export const DEFAULT_CONFIG: Config = { limits: DEFAULT_LIMITS, severity: new Map() };

/** What a headnote.json says, or a sentence that says why it cannot be used. */
export function readConfig(text: string): Config | { readonly problem: string } {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { problem: `it is not JSON (${error instanceof Error ? error.message : "unreadable"})` };
  }
  const parsed = configSchema().safeParse(json);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    return { problem: `${issue?.path.join(".") || "it"}: ${issue?.message ?? "is not understood"}` };
  }
  const severity = new Map(Object.entries(parsed.data.severity ?? {}));
  const unknown = [...severity.keys()].find((code) => !CODES.includes(code));
  if (unknown !== undefined) {
    const [near] = nearest(unknown, CODES);
    return {
      problem: `severity.${unknown}: there is no such finding${near === undefined ? "" : `; did you mean ${near}?`}`,
    };
  }
  const limits = readLimits(parsed.data.limits ?? {});
  return "problem" in limits ? limits : { limits, severity };
}

type LimitEntries = NonNullable<ConfigFile["limits"]>;

function readLimits(stated: LimitEntries): Limits | { readonly problem: string } {
  const limits: { -readonly [K in keyof Limits]: Limits[K] } = { ...DEFAULT_LIMITS };
  const quantities: readonly (readonly [keyof LimitEntries, keyof Limits, Dimension])[] = [
    ["leak-hint", "leakHint", "ratio"],
    ["leak-warning", "leakWarning", "ratio"],
    ["adapter", "adapter", "ratio"],
    ["barometer", "barometer", "pressure"],
    ["cylinders", "cylinders", "ratio"],
  ];
  for (const [key, limit, dimension] of quantities) {
    const text = stated[key];
    if (typeof text !== "string") continue;
    const value = statedValue(text, dimension);
    if (value === undefined)
      return { problem: `limits.${key}: '${text}' is not a ${dimension} with its unit` };
    limits[limit] = value;
  }
  limits.cdLowest = stated["cd-lowest"] ?? limits.cdLowest;
  limits.cdHighest = stated["cd-highest"] ?? limits.cdHighest;
  limits.scaling = stated.scaling ?? limits.scaling;
  return limits;
}
