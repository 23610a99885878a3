// Gives a drawn picture the name and the description that screen readers look for.
import type { VegaLiteSpec } from "./chart-shell.ts";

/** The SVG with role `img` and the chart's title and description as its own, so that it can stand alone. */
export function titledSvg(svg: string, { title, description }: VegaLiteSpec): string {
  const lines = (title as { readonly text?: readonly string[] } | undefined)?.text ?? [];
  const about = typeof description === "string" ? description : "";
  const words = `<title>${escaped(lines.join(" "))}</title><desc>${escaped(about)}</desc>`;
  return svg.replace(/^<svg ([^>]*)>/, (_, attributes: string) => `<svg role="img" ${attributes}>${words}`);
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
