// What the extension's package holds, read off the list of what is let into it.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { globSync } from "tinyglobby";

const ROOT = join(import.meta.dirname, "../..");

/** The package's files by their paths in the project; throws if the list shuts out less than everything to begin with. */
export function packedFiles(): readonly string[] {
  const [all, ...rest] = readFileSync(join(ROOT, ".vscodeignore"), "utf8").trim().split("\n");
  const stray = rest.find((line) => !line.startsWith("!"));
  if (all !== "**" || stray !== undefined) throw new Error("'.vscodeignore' is not a list of what is let in");
  return globSync(
    rest.map((line) => line.slice(1)),
    { cwd: ROOT },
  );
}
