// Findings as test results, for build servers that draw those.
import type { CheckFinding } from "../../../shared/messages/report.ts";
import type { Outcome } from "../outcome.ts";

/** What XML 1.0 (fifth edition, production 2) has no place for, even as a reference. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that XML forbids.
const ILLEGAL = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g;

/** One suite a file; a finding that makes the command fail is a failure, a file without one passes. */
export function junitReport({ files, findings, fails }: Outcome): string {
  const suites = files().map((file) => {
    const own = findings.filter((finding) => finding.file === file);
    return { file, failing: own.filter(fails), passing: own.filter((finding) => !fails(finding)) };
  });
  const failures = suites.reduce((sum, { failing }) => sum + failing.length, 0);
  const tests = suites.reduce((sum, { failing }) => sum + Math.max(1, failing.length), 0);
  return [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<testsuites name="headnote" tests="${tests}" failures="${failures}">`,
    ...suites.flatMap(({ file, failing, passing }) => suite(file, failing, passing)),
    "</testsuites>",
    "",
  ].join("\n");
}

function suite(file: string, failing: readonly CheckFinding[], passing: readonly CheckFinding[]): string[] {
  const count = Math.max(1, failing.length);
  return [
    `  <testsuite name="${xml(file)}" tests="${count}" failures="${failing.length}">`,
    ...(failing.length === 0 ? [`    <testcase classname="${xml(file)}" name="check"/>`] : []),
    ...failing.map(failure),
    ...(passing.length === 0 ? [] : [`    <system-out>${xml(passing.map(words).join("\n"))}</system-out>`]),
    "  </testsuite>",
  ];
}

function failure(finding: CheckFinding): string {
  const { file, range, code, message } = finding;
  const name = `${code} ${range.start.line}:${range.start.column}`;
  return [
    `    <testcase classname="${xml(file)}" name="${xml(name)}">`,
    `      <failure type="${xml(code)}" message="${xml(message)}">${xml(words(finding))}</failure>`,
    "    </testcase>",
  ].join("\n");
}

function words({ file, range, severity, code, message, help }: CheckFinding): string {
  const first = `${file}:${range.start.line}:${range.start.column}: ${severity}[${code}]: ${message}`;
  return help === "" ? first : `${first}\nhelp: ${help}`;
}

function xml(text: string): string {
  return text
    .toWellFormed()
    .replace(ILLEGAL, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
