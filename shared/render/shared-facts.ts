// What the numbers of several runs stand on: what holds for all of them, and what does not.
import type { RunResult } from "../model/result.ts";
import { type Fact, factParts } from "./run-facts.ts";
import type { WantedUnits } from "./wanted-units.ts";

/** A run, and what it is called beside the others. */
export interface NamedRun {
  readonly result: RunResult;
  readonly label: string;
}

const NOT_STATED = "not stated";

/** Of one run its facts. Of several each fact as far as they share it; then who differs, and in what. */
export function sharedFacts(runs: readonly NamedRun[], wanted: WantedUnits = []): readonly Fact[] {
  const all = runs.map(({ result, label }) => {
    const facts = factParts(result, wanted).map(({ label: name, parts }) => [name, parts] as const);
    return { label, facts: new Map(facts) };
  });
  const names = new Set(all.flatMap(({ facts }) => [...facts.keys()]));
  return [...names].flatMap((name) => {
    const lists = all.map(({ label, facts }) => ({ label, parts: facts.get(name) ?? [] }));
    const shared = (lists[0]?.parts ?? []).filter((part) => lists.every(({ parts }) => parts.includes(part)));
    const differences = differing(lists, shared);
    const words = [shared.join(", "), ...(differences === "" ? [] : [`differs: ${differences}`])];
    const said = words.filter((part) => part !== "").join("; ");
    return said === "" ? [] : [{ label: name, words: said }];
  });
}

/** `66.5 degF (i1, i2), 70 degF (i3)`: runs that say the same are named together; nothing where that is what they are called. */
function differing(
  lists: readonly { readonly label: string; readonly parts: readonly string[] }[],
  shared: readonly string[],
): string {
  const own = lists.map(({ label, parts }) => ({
    label,
    words: parts.filter((part) => !shared.includes(part)).join(", "),
  }));
  if (own.every(({ label, words }) => words === "" || words === label)) return "";
  const groups = [...Map.groupBy(own, ({ words }) => words)];
  return groups
    .map(
      ([words, runs]) =>
        `${words === "" ? NOT_STATED : words} (${runs.map(({ label }) => label).join(", ")})`,
    )
    .join(", ");
}
