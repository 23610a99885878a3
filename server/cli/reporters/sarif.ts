// Findings in the exchange format of code scanners: SARIF 2.1.0 (OASIS Standard, 27 March 2020).
import manifest from "../../../package.json" with { type: "json" };
import type { CheckFinding } from "../../../shared/messages/report.ts";
import { findKind } from "../../catalogue.ts";
import type { Outcome } from "../outcome.ts";

const SCHEMA = "https://json.schemastore.org/sarif-2.1.0.json";
const LEVELS = { error: "error", warning: "warning", hint: "note" } as const;

/** One log with one run: the kinds of finding that occur with their explanations, each finding with its mend. */
export function sarifReport({ findings }: Outcome): string {
  const codes = [...new Set(findings.map(({ code }) => code))].sort();
  const log = {
    $schema: SCHEMA,
    version: "2.1.0",
    runs: [
      {
        tool: {
          driver: { name: "Headnote", semanticVersion: manifest.version, rules: codes.map(ruleOf) },
        },
        columnKind: "utf16CodeUnits",
        results: findings.map((finding) => resultOf(finding, codes.indexOf(finding.code))),
      },
    ],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

function ruleOf(code: string) {
  const kind = findKind(code);
  if (kind === undefined) return { id: code };
  const { what, why, severity, bad, good } = kind;
  return {
    id: code,
    shortDescription: { text: what },
    help: {
      text: `${what}\n${why}`,
      markdown: [what, why, "Reported:", fenced(bad), "Not reported:", fenced(good)].join("\n\n"),
    },
    defaultConfiguration: { level: LEVELS[severity] },
  };
}

function fenced(text: string): string {
  return `\`\`\`headnote\n${text.trimEnd()}\n\`\`\``;
}

function resultOf({ file, range, code, severity, message, help, related, fix }: CheckFinding, index: number) {
  return {
    ruleId: code,
    ruleIndex: index,
    level: LEVELS[severity],
    message: { text: help === "" ? message : `${message}\n${help}` },
    locations: [{ physicalLocation: locationOf(file, range) }],
    ...(related.length > 0 && {
      relatedLocations: related.map((place, id) => ({
        id,
        message: { text: place.message },
        physicalLocation: locationOf(place.file, place.range),
      })),
    }),
    ...(fix !== null && {
      fixes: [
        {
          description: { text: fix.title },
          artifactChanges: [
            {
              artifactLocation: artifactOf(file),
              replacements: fix.edits.map((edit) => ({
                deletedRegion: regionOf(edit.range),
                insertedContent: { text: edit.text },
              })),
            },
          ],
        },
      ],
    }),
  };
}

function locationOf(file: string, range: CheckFinding["range"]) {
  return { artifactLocation: artifactOf(file), region: regionOf(range) };
}

/** A relative reference (RFC 3986): every part of the path percent-encoded. */
function artifactOf(file: string) {
  return { uri: file.toWellFormed().split("/").map(encodeURIComponent).join("/"), uriBaseId: "%SRCROOT%" };
}

function regionOf({ start, end }: CheckFinding["range"]) {
  return { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column };
}
