// The editor's own settings: what is shown, never what a record means.
import type { HintKinds } from "../service/inlay-hints.ts";

export interface Settings {
  readonly hints: HintKinds;
  /** Whether lenses stand above the runs. */
  readonly lenses: boolean;
  /** How many findings of one file are shown; 0 shows all. */
  readonly mostFindings: number;
}

const MOST_FINDINGS = 500;

/** Settings from whatever the client sent; what is missing or odd has its default. */
export function readSettings(given: unknown): Settings {
  const hints = member(given, "hints");
  const most = member(member(given, "findings"), "limit");
  return {
    hints: {
      flow: member(hints, "flow") !== false,
      cd: member(hints, "cd") === true,
      gain: member(hints, "gain") !== false,
    },
    lenses: member(member(given, "codeLens"), "enabled") !== false,
    mostFindings: typeof most === "number" && most >= 0 ? Math.floor(most) : MOST_FINDINGS,
  };
}

function member(value: unknown, name: string): unknown {
  return typeof value === "object" && value !== null
    ? (value as Readonly<Record<string, unknown>>)[name]
    : undefined;
}
