// What is generated is committed, and is what its generator makes now.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { CODES } from "../../server/catalogue.ts";
import { LIMIT_ENTRIES } from "../../server/generate/limits.ts";
import { OUTPUTS } from "../../server/generate/outputs.ts";
import { readConfig } from "../../server/service/config.ts";
import { DEFAULT_LIMITS } from "../../shared/model/limits.ts";

const ROOT = join(import.meta.dirname, "../..");

describe.each(OUTPUTS)("$path", ({ path, make }) => {
  test("is fresh (npm run generate)", () => {
    const file = join(ROOT, path);
    expect(existsSync(file) ? readFileSync(file, "utf8") : undefined).toBe(make());
  });

  test("comes out the same twice and ends in one line end", () => {
    expect(make()).toBe(make());
    expect(make()).toMatch(/\S\n$/);
  });
});

function schema(name: string): object {
  return JSON.parse(readFileSync(join(ROOT, `grammar/schemas/${name}.schema.json`), "utf8"));
}

/** What the settings' schema says against a settings file. */
function settingsErrors(settings: unknown): readonly string[] {
  const ajv = new Ajv2020({ strict: true, allErrors: true, strictTypes: false });
  ajv.validate(schema("config"), settings);
  return (ajv.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

describe("the schemas", () => {
  test.each(["table", "check", "config"])(
    "%s.schema.json is a valid schema with an id of its own",
    (name) => {
      expect(schema(name)).toMatchObject({
        $schema: "https://json-schema.org/draft/2020-12/schema",
        $id: `headnote-${name}-1`,
        title: `headnote-${name}-1`,
      });
      expect(new Ajv2020({ strict: true, strictTypes: false }).validateSchema(schema(name))).toBe(true);
    },
  );

  test("take an empty settings file and every code", () => {
    expect(settingsErrors({})).toEqual([]);
    expect(settingsErrors({ severity: Object.fromEntries(CODES.map((code) => [code, "off"])) })).toEqual([]);
  });

  test("refuse a code, a level and a limit that there is not", () => {
    expect(settingsErrors({ severity: { "off-targett": "off" } })).toHaveLength(1);
    expect(settingsErrors({ severity: { "off-target": "fatal" } })).toHaveLength(1);
    expect(settingsErrors({ limits: { leak: "5 %" } })).toHaveLength(1);
  });
});

describe("the limits that can be set", () => {
  const stated = Object.fromEntries(LIMIT_ENTRIES.map(({ key, standard }) => [key, standard]));

  test("are read and mean what holds without them", () => {
    expect(settingsErrors({ limits: stated })).toEqual([]);
    const config = readConfig(JSON.stringify({ limits: stated }));
    if ("problem" in config) throw new Error(config.problem);
    for (const [key, value] of Object.entries(config.limits)) {
      expect(value, key).toBeCloseTo(DEFAULT_LIMITS[key as keyof typeof DEFAULT_LIMITS], 1);
    }
  });

  test("are all told of", () => {
    const known = (schema("config") as { properties: { limits: { properties: object } } }).properties.limits;
    expect(Object.keys(known.properties)).toEqual(Object.keys(stated));
    expect(LIMIT_ENTRIES).toHaveLength(Object.keys(DEFAULT_LIMITS).length);
  });
});
