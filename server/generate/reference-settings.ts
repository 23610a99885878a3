// The part of the reference that says what a workspace can set.
import { LIMIT_ENTRIES } from "./limits.ts";
import { anchor, code, fence, table } from "./markdown.ts";

const EXAMPLE = {
  severity: { "no-humidity": "off", "off-target": "error" },
  limits: { "leak-hint": "4 %", barometer: "40 hPa" },
};

/** headnote.json: severities and the limits that have no published source. */
export function settingsReference(): string {
  const intro = `A file \`headnote.json\` in the top folder of the records says how findings are weighed there, in the editor and on
the command line alike. \`{}\` is a valid one.`;
  const rows = LIMIT_ENTRIES.map(({ key, standard, doc }) => [
    `${anchor(`limit-${key}`)}${code(key)}`,
    code(typeof standard === "string" ? `"${standard}"` : String(standard)),
    doc,
  ]);
  return [
    `${anchor("settings")}\n\n## Settings`,
    intro,
    fence("json", JSON.stringify(EXAMPLE, null, 2)),
    "`severity` gives a finding another weight: `error`, `warning`, `hint` or `off`.",
    "`limits` are common practice, no published source. A value with a unit is written as in a record.",
    table(["limit", "usual value", "meaning"], rows),
  ].join("\n\n");
}
