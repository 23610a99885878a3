// What other programs read of `check` and `table`: each format holds to its own rules, whatever stands in the record.
import sarifSchema from "@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json" with { type: "json" };
import { Ajv } from "ajv";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { KINDS } from "../../server/catalogue.ts";
import { type Outcome, summaryOf } from "../../server/cli/outcome.ts";
import { githubReport } from "../../server/cli/reporters/github.ts";
import { REPORTERS } from "../../server/cli/reporters/index.ts";
import { junitReport } from "../../server/cli/reporters/junit.ts";
import { sarifReport } from "../../server/cli/reporters/sarif.ts";
import type { CheckFinding } from "../../shared/messages/report.ts";
import { reportJsonSchemas } from "../../shared/messages/report.ts";
import { inShop } from "../kit/command.ts";

const NEAT = "headnote 1\nbench b\n  shows      flow\n";
const COMMA = "headnote 1\nbench b\n  shows      flow\n  repeat     0,4 %\n";
const ODD_NAME = "kopf 1,5:0%/ä.headnote";

function outcomeOf(findings: readonly CheckFinding[]): Outcome {
  const files = [...new Set(findings.map(({ file }) => file))];
  return {
    files: () => files,
    findings,
    summary: summaryOf(files.length, findings),
    lineOf: () => "",
    fails: ({ severity }) => severity === "error",
  };
}

const position = fc.nat(200).map((line) => ({
  start: { line: line + 1, column: 1 },
  end: { line: line + 1, column: 5 },
}));
const words = fc.string({ unit: "binary", maxLength: 30 });

/** Findings whose words and files are of any characters. */
const findings: fc.Arbitrary<readonly CheckFinding[]> = fc.array(
  fc.record({
    file: fc.string({ unit: "binary", minLength: 1, maxLength: 12 }),
    range: position,
    code: fc.constantFrom("fall-back", "no-air", "decimal-comma"),
    severity: fc.constantFrom("error", "warning", "hint"),
    message: words,
    help: words,
    related: fc.constant([]),
    fix: fc.constant(null),
  }),
  { maxLength: 40 },
);

describe("JSON", () => {
  const ajv = new Ajv2020({ strict: false });
  const schemas = reportJsonSchemas();

  test.each([
    ["findings", COMMA],
    ["no findings", NEAT],
    ["an empty file", ""],
  ])("of check holds to its schema: %s", async (_, text) => {
    await inShop({ "x.headnote": text }, async (shop) => {
      const { out } = await shop.headnote(["check", "--format", "json"]);
      expect(ajv.validate(schemas.check, JSON.parse(out)), ajv.errorsText()).toBe(true);
    });
  });

  test("of check is a valid document where no file is read", async () => {
    await inShop({}, async (shop) => {
      const { code, out } = await shop.headnote(["check", "--format", "json"]);
      expect(code).toBe(2);
      expect(JSON.parse(out).findings).toEqual([]);
    });
  });

  test("of table holds to its schema", async () => {
    const record =
      "headnote 1\nbench b\n  shows flow\nsession 2026-03-02\n  bench b\nrun r\n  lift[in] depression[inH2O] flow[cfm]\n  0.1 28 60\n  - 28 60 void\n";
    await inShop({ "x.headnote": record, "y.headnote": NEAT }, async (shop) => {
      for (const file of ["x.headnote", "y.headnote"]) {
        const { out } = await shop.headnote(["table", file, "--format", "json"]);
        expect(ajv.validate(schemas.table, JSON.parse(out)), ajv.errorsText()).toBe(true);
      }
    });
  });

  test("offers the mend that the finding has", async () => {
    await inShop({ "x.headnote": COMMA }, async (shop) => {
      const { out } = await shop.headnote(["check", "--format", "json"]);
      const [found] = JSON.parse(out).findings;
      expect(found.fix.edits).toEqual([
        { range: { start: { line: 4, column: 14 }, end: { line: 4, column: 17 } }, text: "0.4" },
      ]);
    });
  });
});

describe("SARIF", () => {
  test("points from each result to its rule, by relative addresses", async () => {
    await inShop({ [ODD_NAME]: COMMA }, async (shop) => {
      const { out } = await shop.headnote(["check", "--format", "sarif"]);
      const log = JSON.parse(out);
      expect(log.version).toBe("2.1.0");
      const [{ tool, results, columnKind }] = log.runs;
      expect(columnKind).toBe("utf16CodeUnits");
      expect(results).toHaveLength(1);
      const [result] = results;
      expect(tool.driver.rules[result.ruleIndex].id).toBe(result.ruleId);
      expect(tool.driver.rules[result.ruleIndex].help.text).not.toBe("");
      const { artifactLocation, region } = result.locations[0].physicalLocation;
      // RFC 3986, 3.3: what is no segment character of its own is percent-encoded; %C3%A4 is "ä" in UTF-8.
      expect(artifactLocation.uri).toBe("kopf%201%2C5%3A0%25/%C3%A4.headnote");
      expect(region).toEqual({ startLine: 4, startColumn: 14, endLine: 4, endColumn: 17 });
      expect(result.fixes[0].artifactChanges[0].replacements[0].insertedContent.text).toBe("0.4");
    });
  });

  describe("by the published schema", () => {
    // JSON Schema draft 4, of whose ways of its own it only has the two names.
    const { $schema: _, id: __, ...schema } = sarifSchema;
    const options = { strict: false, allErrors: true, validateFormats: false, unicodeRegExp: false };
    const validate = new Ajv(options).compile(schema);
    const checkValid = (text: string) => {
      validate(JSON.parse(text));
      expect(validate.errors ?? []).toEqual([]);
    };

    test("is valid whatever was found, and where nothing was", () => {
      fc.assert(fc.property(findings, (found) => checkValid(sarifReport(outcomeOf(found)))));
      checkValid(sarifReport(outcomeOf([])));
    });

    test("is valid for every kind of finding, with its places and its mend", async () => {
      const files = Object.fromEntries(KINDS.map(({ code, bad }) => [`${code}.headnote`, bad]));
      await inShop(files, async (shop) => {
        const { out } = await shop.headnote(["check", "--format", "sarif"]);
        checkValid(out);
        expect(out).toContain('"fixes"');
        expect(out).toContain('"relatedLocations"');
      });
    });

    test("would not be without what it must have", () => {
      expect(validate({ version: "2.1.0" })).toBe(false);
      expect(validate({ version: "2.1.0", runs: [{ tool: { driver: {} }, results: [] }] })).toBe(false);
    });
  });

  test("has an empty list of results where there are no findings", async () => {
    await inShop({ "x.headnote": NEAT }, async (shop) => {
      const { out } = await shop.headnote(["check", "--format", "sarif"]);
      expect(JSON.parse(out).runs[0].results).toEqual([]);
    });
  });
});

describe("workflow commands", () => {
  const COMMANDS = ["error", "warning", "notice"];

  test("escape what would end a property or a line", async () => {
    await inShop({ [ODD_NAME]: COMMA }, async (shop) => {
      const { out } = await shop.headnote(["check", "--format", "github"]);
      expect(out).toMatch(/^::error file=kopf 1%2C5%3A0%25\/ä\.headnote,line=4,/);
    });
  });

  test("stand one a line, at most ten of a level, the worst first", () => {
    fc.assert(
      fc.property(findings, (found) => {
        const lines = githubReport(outcomeOf(found)).split("\n");
        const levels = lines.map((line) => /^::(error|warning|notice) /.exec(line)?.[1] ?? "");
        const shown = levels.filter((level) => level !== "");
        const rank = (level: string) => COMMANDS.indexOf(level);
        expect(shown).toEqual([...shown].sort((a, b) => rank(a) - rank(b)));
        for (const level of COMMANDS) {
          expect(shown.filter((each) => each === level).length).toBeLessThanOrEqual(10);
        }
        // Commands, the summary, and what stands behind its line end.
        expect(lines).toHaveLength(shown.length + 2);
      }),
    );
  });

  test("say how many are left out", () => {
    const finding = (severity: "error" | "hint"): CheckFinding => ({
      file: "a",
      range: { start: { line: 1, column: 1 }, end: { line: 1, column: 2 } },
      code: "c",
      severity,
      message: "m",
      help: "",
      related: [],
      fix: null,
    });
    const many = [...Array(12).fill(finding("hint")), finding("error")];
    expect(githubReport(outcomeOf(many))).toMatch(/\n1 file, 1 error, 12 hints; 2 of them not shown here\n$/);
  });
});

describe("JUnit", () => {
  test("is well-formed XML of legal characters, whatever the words are", () => {
    fc.assert(
      fc.property(findings, (found) => {
        const xml = junitReport(outcomeOf(found));
        // XML 1.0 (fifth edition), production 2.
        expect(xml).toMatch(/^[\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]*$/u);
        const tags = [...xml.matchAll(/<(\/?)([a-z-]+)(?: [a-z]+="[^"<]*")*(\/?)>/g)];
        expect(xml.match(/</g)).toHaveLength(tags.length + 1);
        const open: string[] = [];
        for (const [, closes, name = "", empty] of tags) {
          if (closes === "/") expect(open.pop()).toBe(name);
          else if (empty === "") open.push(name);
        }
        expect(open).toEqual([]);
      }),
    );
  });

  test("fails a file by what makes the command fail, and passes the others", async () => {
    await inShop({ "a.headnote": COMMA, "b.headnote": NEAT }, async (shop) => {
      const { out } = await shop.headnote(["check", "--format", "junit"]);
      expect(out).toContain('<testsuites name="headnote" tests="2" failures="1">');
      const lenient = await shop.headnote(["check", "--format", "junit", "--fail-on", "never"]);
      expect(lenient.out).toContain('failures="0"');
      expect(lenient.out).toContain("<system-out>");
    });
  });
});

describe("every format", () => {
  test("says the same from any folder, but for the way to the file", async () => {
    await inShop({ "in/x.headnote": COMMA }, async (shop) => {
      for (const format of Object.keys(REPORTERS)) {
        const { out } = await shop.headnote(["check", "in", "--format", format]);
        expect(out).not.toContain(shop.folder);
        expect(out).toContain("in/x.headnote");
        expect(out.endsWith("\n")).toBe(true);
      }
    });
  });

  test("leaves colour to text on a terminal", async () => {
    await inShop({ "x.headnote": COMMA }, async (shop) => {
      const coloured = async (args: readonly string[], env: Record<string, string> = {}) =>
        (await shop.headnote(["check", ...args], { isTerminal: () => true, env })).out.includes("\u001B[");
      expect(await coloured([])).toBe(true);
      expect(await coloured(["--color", "never"])).toBe(false);
      expect(await coloured([], { NO_COLOR: "1" })).toBe(false);
      expect(await coloured([], { TERM: "dumb" })).toBe(false);
      expect(await coloured(["--color", "always"], { NO_COLOR: "1" })).toBe(true);
      expect(await coloured(["--format", "json", "--color", "always"])).toBe(false);
    });
  });
});
