// Turns a chart's specification into a picture: SVG, and PNG with a font of its own, the same on every machine.
import { createRequire } from "node:module";
import * as vega from "vega";
import { compile, type TopLevelSpec } from "vega-lite";
import type { VegaLiteSpec } from "../../shared/render/chart-shell.ts";
import { textWidth } from "../../shared/render/chart-text.ts";
import { titledSvg } from "../../shared/render/titled-svg.ts";

const FONT = "DejaVu Sans";
const FONT_FILES = ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"];

/** How the drawing library measures texts; it exports this without saying so in its types. */
interface TextMetrics {
  width: (item: { readonly fontSize?: number; readonly fontWeight?: unknown }, text: string) => number;
}

/**
 * The picture as SVG that stands alone: role `img`, the chart's title and description as its own. Rejects a
 * specification that is not valid Vega-Lite.
 */
export async function drawSvg(spec: VegaLiteSpec): Promise<string> {
  const logger = vega.logger(vega.None);
  // Without a canvas the library takes 0.8 of the font size for every letter and would leave gaps around the picture.
  const { textMetrics } = vega as unknown as { readonly textMetrics: TextMetrics };
  textMetrics.width = ({ fontSize, fontWeight }, text) =>
    textWidth(text, fontSize ?? 11, fontWeight === "bold");
  const { spec: vegaSpec } = compile(spec as unknown as TopLevelSpec, { logger });
  const view = new vega.View(vega.parse(vegaSpec), { renderer: "none", logger });
  try {
    return titledSvg(await view.toSVG(), spec);
  } finally {
    view.finalize();
  }
}

/** The SVG as PNG, `scale` pixels to one of its own. */
export async function drawPng(svg: string, scale = 2): Promise<Uint8Array> {
  const { Resvg } = await import("@resvg/resvg-js");
  const require = createRequire(import.meta.url);
  const fontFiles = FONT_FILES.map((file) => require.resolve(`dejavu-fonts-ttf/ttf/${file}`));
  const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: FONT, sansSerifFamily: FONT };
  return new Resvg(svg, { fitTo: { mode: "zoom", value: scale }, font }).render().asPng();
}
