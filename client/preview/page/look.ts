// What the page looks like from outside: how wide the picture may be, and the editor's colours.
import type { Look } from "../../../shared/messages/preview.ts";

const NARROWEST = 280;
/** A wider picture makes slopes flat and eyes travel. */
const WIDEST = 1080;
/** The margins that a picture brings lie over those of the page. */
const MARGINS = 32;

/** Colours are those that the editor, or the system's forced ones, give to the page's body. */
export function readLook(room: HTMLElement): Look {
  const { backgroundColor, color, fontFamily } = getComputedStyle(document.body);
  return {
    width: Math.round(Math.min(WIDEST, Math.max(NARROWEST, room.clientWidth + MARGINS))),
    colours: { kind: kind(), background: backgroundColor, text: color, font: fontFamily.slice(0, 500) },
  };
}

/** Tells when width or colours have changed; many small changes are told as one. */
export function watchLook(room: HTMLElement, changed: () => void): void {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(changed, 60);
  };
  new ResizeObserver(soon).observe(room);
  new MutationObserver(soon).observe(document.body, {
    attributes: true,
    attributeFilter: ["class", "data-vscode-theme-id"],
  });
  matchMedia("(forced-colors: active)").addEventListener("change", soon);
}

function kind(): Look["colours"]["kind"] {
  const { classList } = document.body;
  const isForced = matchMedia("(forced-colors: active)").matches;
  const isLight = classList.contains("vscode-light") || classList.contains("vscode-high-contrast-light");
  const isStrong = isForced || [...classList].some((name) => name.startsWith("vscode-high-contrast"));
  if (!isStrong) return isLight ? "light" : "dark";
  const hasLightPaper = isForced ? matchMedia("(prefers-color-scheme: light)").matches : isLight;
  return hasLightPaper ? "high-contrast-light" : "high-contrast-dark";
}
