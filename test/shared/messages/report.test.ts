import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import {
  type CheckReport,
  checkReportSchema,
  reportJsonSchemas,
  tableReportSchema,
} from "../../../shared/messages/report.ts";
import { SCHEMA_VERSION } from "../../../shared/messages/schema-version.ts";
import { tableReport } from "../../../shared/render/table-report.ts";
import { tableInput } from "../render/table-input.ts";
import { AS_CAST, SHORT_SIDE, smallRecord } from "../sample-record.ts";

const schemas = reportJsonSchemas();
const ajv = new Ajv2020({ strict: true, allErrors: true });
const validators = { table: ajv.compile(schemas.table), check: ajv.compile(schemas.check) };

/** Checks a document against the published JSON Schema, and against the schema that it was made from. */
function checkValid(command: "table" | "check", report: unknown): void {
  const document: unknown = JSON.parse(JSON.stringify(report));
  const validate = validators[command];
  validate(document);
  expect(validate.errors).toBeNull();
  const schema = command === "table" ? tableReportSchema : checkReportSchema;
  expect(schema.parse(document)).toEqual(document);
}

function checkInvalid(command: "table" | "check", document: unknown): void {
  expect(validators[command](document)).toBe(false);
}

const CHECK: CheckReport = {
  schemaVersion: 1,
  findings: [
    {
      file: "a.headnote",
      range: { start: { line: 3, column: 1 }, end: { line: 3, column: 4 } },
      code: "decimal-comma",
      severity: "error",
      message: "a comma stands in a number",
      help: "write a point",
      related: [],
      fix: {
        title: "Write a point",
        edits: [{ range: { start: { line: 3, column: 2 }, end: { line: 3, column: 3 } }, text: "." }],
      },
    },
  ],
  summary: { files: 1, errors: 1, warnings: 0, hints: 0 },
};

describe("the published schema of a table", () => {
  test.each([
    ["the sample record", AS_CAST],
    ["a run with a void row", SHORT_SIDE],
    ["no runs", ""],
    ["a run that says nothing", "run r"],
    ["a metric exhaust port", smallRecord({ port: ["side exhaust", "valve 38 mm"], rows: ["0.1 28 50"] })],
    [
      "check plates that are known, unknown and not named",
      smallRecord({
        more: "plate p1\nflow 50 cfm at 28 inH2O in isa\nuncertainty 1 %\nplate-check p1\ndepression[inH2O] flow[cfm]\n28 51\nplate-check p2\nplate-check",
      }),
    ],
    ["rows without readings", smallRecord({ rows: ["- - -", "0.1 0 0"] })],
  ])("accepts %s", (_, text) => {
    checkValid("table", tableReport(tableInput(text)));
  });

  test("accepts nothing that it does not know, and asks for every calculation", () => {
    const report = tableReport(tableInput(AS_CAST));
    checkInvalid("table", { ...report, more: 1 });
    checkInvalid("table", { ...report, schemaVersion: 2 });
    const withPoint = (change: object) => {
      const [run] = report.runs;
      return { ...report, runs: [{ ...run, points: [{ ...run?.points[0], ...change }] }] };
    };
    checkValid("table", withPoint({}));
    checkInvalid("table", JSON.parse(JSON.stringify(withPoint({ correctedFlow: undefined }))));
    checkInvalid("table", withPoint({ cd: { curtain: "0.6" } }));
  });
});

describe("the published schema of a check", () => {
  test("accepts findings with and without a fix, and none at all", () => {
    checkValid("check", CHECK);
    checkValid("check", { ...CHECK, findings: CHECK.findings.map((finding) => ({ ...finding, fix: null })) });
    checkValid("check", {
      schemaVersion: 1,
      findings: [],
      summary: { files: 0, errors: 0, warnings: 0, hints: 0 },
    });
  });

  test("counts lines and columns from 1", () => {
    const range = { start: { line: 0, column: 1 }, end: { line: 1, column: 1 } };
    checkInvalid("check", { ...CHECK, findings: CHECK.findings.map((finding) => ({ ...finding, range })) });
  });
});

test("both schemas are plain JSON of draft 2020-12, and of the version that reports carry", () => {
  expect(SCHEMA_VERSION).toBe(1);
  for (const schema of Object.values(schemas)) {
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    expect(schema).toHaveProperty("$schema", "https://json-schema.org/draft/2020-12/schema");
  }
});
