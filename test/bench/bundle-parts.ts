// What a bundle is made of, package by package.
import { build } from "esbuild";

export interface BundlePart {
  /** A package, or `own` for our sources. */
  readonly of: string;
  readonly bytes: number;
}

/** The parts of what the build makes of an entry for an editor's extension host, the largest first. */
export async function bundleParts(
  entry: string,
  platform: "node" | "browser",
): Promise<readonly BundlePart[]> {
  const { metafile } = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    platform,
    format: "cjs",
    external: ["vscode"],
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
  return [...sizes].map(([of, bytes]) => ({ of, bytes })).sort((a, b) => b.bytes - a.bytes);
}
