// How a picture is written, by the ending of its file.
import type { VegaLiteSpec } from "../../shared/render/chart-shell.ts";

export type Drawing = (spec: VegaLiteSpec) => Promise<string | Uint8Array>;

const DRAWINGS: Readonly<Record<string, Drawing>> = {
  ".svg": async (spec) => (await import("./draw.ts")).drawSvg(spec),
  ".png": async (spec) => {
    const { drawPng, drawSvg } = await import("./draw.ts");
    return drawPng(await drawSvg(spec));
  },
  ".json": async (spec) => `${JSON.stringify(spec, null, 2)}\n`,
};

/** For an ending with its point, in any letter case; `undefined` for what is no picture. */
export function drawing(ending: string): Drawing | undefined {
  return DRAWINGS[ending.toLowerCase()];
}
