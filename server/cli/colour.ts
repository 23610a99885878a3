// Whether the result may be coloured.
import type { Io } from "./io.ts";

/** `always` and `never` are obeyed; else only a terminal that can, and only where NO_COLOR is not set. */
export function wantsColour(choice: string | undefined, { isTerminal, env }: Io): boolean {
  if (choice === "always" || choice === "never") return choice === "always";
  return isTerminal() && (env["NO_COLOR"] ?? "") === "" && env["TERM"] !== "dumb";
}
