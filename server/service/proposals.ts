// Proposals for findings: each is for the user to choose and to put right, so that none may be applied unseen.
import type { Finding, Fix } from "../../shared/finding.ts";
import type { Analysis } from "../analysis/project.ts";
import type { Scope } from "../analysis/scope.ts";
import { addHead, completed, condition, stated } from "./proposals/example-line.ts";
import { includeDefinition, rightPath } from "./proposals/found-file.ts";
import {
  addUnit,
  asAltimeter,
  fillCells,
  freeName,
  meantUnit,
  plainDate,
  plainName,
  plainNumber,
} from "./proposals/rewritten.ts";
import { removeLine, removeWords } from "./proposals/taken-out.ts";

type Proposal = (analysis: Analysis, finding: Finding) => Fix | undefined;
type Search = (analysis: Analysis, finding: Finding, others: readonly Scope[]) => Fix | undefined;

/** By code; a new one is one line. */
const PROPOSALS: Readonly<Record<string, Proposal>> = {
  "missing-line": stated,
  "missing-value": completed,
  "no-bench": (analysis, finding) => condition(analysis, finding, "bench"),
  "no-target": (analysis, finding) => condition(analysis, finding, "target"),
  "no-air": (analysis, finding) => condition(analysis, finding, "air"),
  "no-leak": (analysis, finding) => condition(analysis, finding, "leak"),
  "no-entry": stated,
  "missing-columns": addHead,
  // Which cell was left out cannot be told, only that the last have none.
  "missing-cell": fillCells,
  "missing-unit": addUnit,
  "wrong-dimension": meantUnit,
  "number-form": plainNumber,
  "bad-name": plainName,
  "bad-date": plainDate,
  "duplicate-id": freeName,
  "altimeter-as-station": asAltimeter,
  "repeated-line": removeLine,
  "include-cycle": removeLine,
  "extra-value": removeWords,
  "unread-text": removeWords,
};

/** By code: what the other records of the workspace must be looked through for. */
const SEARCHES: Readonly<Record<string, Search>> = {
  "name-not-found": includeDefinition,
  "missing-include": rightPath,
};

/** Whether the other records may have what a finding misses. */
export function asksOthers({ code }: Finding): boolean {
  return SEARCHES[code] !== undefined;
}

/** A proposal for a finding, where there is one; `others` are the records of the workspace. */
export function proposalOf(analysis: Analysis, finding: Finding, others: readonly Scope[]): Fix | undefined {
  const { code } = finding;
  return PROPOSALS[code]?.(analysis, finding) ?? SEARCHES[code]?.(analysis, finding, others);
}
