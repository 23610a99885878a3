// Finds the run that a trace or a ladder belongs to, in its own file or in one that it includes.
import type { Setup } from "../../shared/model/setup.ts";
import type { Scope } from "./scope.ts";

/** A run as what belongs to it sees it. */
export interface OwningRun {
  readonly path: string;
  /** The line of its file that its block begins on. */
  readonly start: number;
  readonly setup: Setup;
}

export type Owner = (id: string | undefined) => OwningRun | undefined;

interface SettledAt {
  readonly placed: { readonly path: string; readonly start: number };
  readonly setup: Setup;
}

/** Looks among the file's own settled runs, and for others among those of the file that defines them. */
export function ownerAmong(
  { file, locate }: Scope,
  own: readonly SettledAt[],
  settledIn: (path: string) => readonly SettledAt[],
): Owner {
  return (id) => {
    const place = id === undefined ? undefined : locate("run", id);
    if (place === undefined) return undefined;
    const runs = place.path === file.path ? own : settledIn(place.path);
    const found = runs.find(({ placed }) => placed.start === place.start);
    return found && { path: place.path, start: place.start, setup: found.setup };
  };
}
