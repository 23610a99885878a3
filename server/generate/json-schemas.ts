// Makes the JSON Schemas (draft 2020-12) of what the command prints and of headnote.json, from the schemas it checks with.
import * as z from "zod/mini";
import { benchReportSchema } from "../../shared/messages/bench-report.ts";
import { compareReportSchema } from "../../shared/messages/compare-report.ts";
import { configSchema } from "../../shared/messages/config.ts";
import { reportJsonSchemas } from "../../shared/messages/report.ts";
import { SCHEMA_VERSION } from "../../shared/messages/schema-version.ts";
import { KINDS } from "../catalogue.ts";
import { LIMIT_ENTRIES } from "./limits.ts";

/** What `table --format json` prints. */
export function tableSchema(): string {
  const description = "What headnote table --format json prints: the runs of one file and their results.";
  return printed("table", SCHEMA_VERSION, description, reportJsonSchemas().table);
}

/** What `check --format json` prints. */
export function checkSchema(): string {
  const description = "What headnote check --format json prints: findings with their places and fixes.";
  return printed("check", SCHEMA_VERSION, description, reportJsonSchemas().check);
}

/** What `bench --format json` prints. */
export function benchSchema(): string {
  const description = "What headnote bench --format json prints: what the records show of each bench.";
  return printed("bench", SCHEMA_VERSION, description, z.toJSONSchema(benchReportSchema));
}

/** What `compare --format json` prints. */
export function compareSchema(): string {
  const description = "What headnote compare --format json prints: runs laid over a baseline, lift by lift.";
  return printed("compare", SCHEMA_VERSION, description, z.toJSONSchema(compareReportSchema));
}

/** What headnote.json may say; says more than the schema it is made from, so that an editor can complete and explain. */
export function configJsonSchema(): string {
  const base = z.toJSONSchema(configSchema());
  const level = { enum: ["error", "warning", "hint", "off"] };
  const severity = {
    type: "object",
    description: "How much findings weigh in this workspace, by their code.",
    properties: Object.fromEntries(
      KINDS.map(({ code, severity: standard, what }) => [
        code,
        { ...level, description: what, default: standard },
      ]),
    ),
    additionalProperties: false,
  };
  const limits = {
    ...object(base.properties?.["limits"]),
    description: "Limits that have no published source. What is left out keeps its usual value.",
    properties: Object.fromEntries(
      LIMIT_ENTRIES.map(({ key, standard, doc }) => [
        key,
        { type: typeof standard, description: doc, default: standard },
      ]),
    ),
  };
  const description = "Settings of the workspace whose top folder holds this file; {} is a valid one.";
  const properties = { ...base.properties, severity, limits };
  return printed("config", 1, description, { ...base, properties });
}

function printed(name: string, version: number, description: string, schema: object): string {
  const id = `headnote-${name}-${version}`;
  const { $schema, ...rest } = object(schema);
  return `${JSON.stringify({ $schema, $id: id, title: id, description, ...rest }, null, 2)}\n`;
}

function object(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? { ...value } : {};
}
