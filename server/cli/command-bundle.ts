// The command's bundle with the code that the engine has compiled of it: most of a short check is else spent on compiling.
import { readFileSync } from "node:fs";
import { dirname } from "node:path";
import { Script } from "node:vm";
import type { run } from "./run.ts";

/** The compiled code lies beside the bundle and bears the name of the engine, since another would take it amiss. */
export function compiledPath(bundle: string): string {
  const { version, platform, arch } = process;
  return `${bundle}.${version}-${platform}-${arch}`;
}

/** The bundle as a script; what is compiled while it runs can be taken from it afterwards. */
export function bundleScript(bundle: string, compiled?: Buffer): Script {
  // It is plain ASCII, which reads faster as Latin-1 than as UTF-8.
  return new Script(readFileSync(bundle, "latin1"), {
    filename: bundle,
    ...(compiled !== undefined && { cachedData: compiled }),
  });
}

/** What the bundle exports. */
export function commandOf(
  script: Script,
  bundle: string,
  require: (id: string) => unknown,
): { run: typeof run } {
  const module = { exports: {} };
  script.runInThisContext()(module.exports, require, module, bundle, dirname(bundle));
  return module.exports as { run: typeof run };
}
