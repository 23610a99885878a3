// What a bundle is made of, package by package.
import { build } from "esbuild";

export interface BundlePart {
  /** A package, or `own` for our sources. */
  readonly of: string;
  readonly bytes: number;
}

/** The parts of what the build makes of an entry for an editor's extension host; `apart` is what it leaves out. */
export async function bundleParts(
  entry: string,
  apart: readonly string[] = [],
): Promise<readonly BundlePart[]> {
  const { metafile } = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    platform: "node",
    format: "cjs",
    external: ["vscode", ...apart],
    outfile: "bundle.cjs",
    write: false,
    metafile: true,
  });
  const sizes = new Map<string, number>();
  for (const { inputs } of Object.values(metafile.outputs)) {
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      const of = /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1] ?? "own";
      sizes.set(of, (sizes.get(of) ?? 0) + bytesInOutput);
    }
  }
  return [...sizes].map(([of, bytes]) => ({ of, bytes }));
}
