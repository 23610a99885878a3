// Makes REFERENCE.md: the whole format for the person who writes records, from the lists that the reader itself uses.
import { columnsReference } from "./reference-columns.ts";
import { findingsReference } from "./reference-findings.ts";
import { firstPage, STABILITY } from "./reference-format.ts";
import { blocksReference } from "./reference-lines.ts";
import { resultsReference } from "./reference-results.ts";
import { settingsReference } from "./reference-settings.ts";
import { airsReference, unitsReference } from "./reference-units.ts";

/** The reference as Markdown, ending in a line end. */
export function reference(): string {
  const parts = [
    "<!-- Generated from the source by `npm run generate`; changes made here are lost. -->",
    firstPage(),
    blocksReference(),
    columnsReference(),
    unitsReference(),
    airsReference(),
    resultsReference(),
    settingsReference(),
    findingsReference(),
    STABILITY,
  ];
  return `${parts.join("\n\n")}\n`;
}
