// What completion offers at the cursor of a fixture.
import { type Completion, completion } from "../../server/service/completion.ts";
import { open } from "./service.ts";

/** The items at `$0`, the likeliest first, on a day that never changes. */
export function offersAt(
  fixture: string,
  paths: readonly string[] = [],
  trigger?: string,
): readonly Completion[] {
  const { analysis, position, findings } = open(fixture);
  return completion(analysis, position, {
    now: "2026-11-25T09:30+01:00",
    paths,
    findings: () => findings,
    trigger,
  });
}

/** Their labels. */
export function labelsAt(fixture: string, paths?: readonly string[]): readonly string[] {
  return offersAt(fixture, paths).map(({ label }) => label);
}
