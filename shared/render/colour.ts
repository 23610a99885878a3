// Reads the colours an editor names, mixes them, and measures how far two stand apart.

/** Red, green and blue, 0 to 255. */
export type Colour = readonly [red: number, green: number, blue: number];

/** The form "#rgb", "#rgba", "#rrggbb" or "#rrggbbaa". */
const HEX = /^#([0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$/i;
/** "rgb(…)" and "rgba(…)" with commas or blanks, alpha as a share or in per cent. */
const FUNCTION = /^rgba?\(\s*([\d.]+)[\s,]+([\d.]+)[\s,]+([\d.]+)(?:[\s,/]+([\d.]+%?))?\s*\)$/i;

/** A CSS colour as it shows on `ground`; `undefined` for what is not written in hexadecimal or as `rgb(…)`. */
export function parseColour(text: string, ground: Colour): Colour | undefined {
  const channels = hexChannels(text.trim()) ?? functionChannels(text.trim());
  if (channels === undefined || channels.some((channel) => !Number.isFinite(channel))) return undefined;
  const [red = 0, green = 0, blue = 0, alpha = 1] = channels;
  return mixed(
    ground,
    [red, green, blue].map((channel) => Math.min(channel, 255)) as unknown as Colour,
    alpha,
  );
}

function hexChannels(text: string): number[] | undefined {
  const digits = HEX.exec(text)?.[1];
  if (digits === undefined) return undefined;
  const size = digits.length > 4 ? 2 : 1;
  const channels: number[] = [];
  for (let at = 0; at < digits.length; at += size) {
    channels.push(Number.parseInt(digits.slice(at, at + size).repeat(3 - size), 16));
  }
  return channels.map((channel, index) => (index === 3 ? channel / 255 : channel));
}

function functionChannels(text: string): number[] | undefined {
  const [, red, green, blue, alpha] = FUNCTION.exec(text) ?? [];
  if (red === undefined) return undefined;
  const share = alpha?.endsWith("%") ? Number.parseFloat(alpha) / 100 : Number(alpha ?? 1);
  return [Number(red), Number(green), Number(blue), Math.min(share, 1)];
}

/** `share` of `over`, the rest `ground`. */
export function mixed(ground: Colour, over: Colour, share: number): Colour {
  const mix = (at: 0 | 1 | 2) => ground[at] + (over[at] - ground[at]) * share;
  return [mix(0), mix(1), mix(2)];
}

/** "#rrggbb". */
export function hexColour(colour: Colour): string {
  return `#${colour.map((channel) => Math.round(channel).toString(16).padStart(2, "0")).join("")}`;
}

/** Contrast ratio, 1 to 21 (WCAG 2.2, "contrast ratio" and "relative luminance"). */
export function contrast(a: Colour, b: Colour): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** Whether white stands further apart from it than black. */
export function isDark(colour: Colour): boolean {
  return contrast(colour, [255, 255, 255]) > contrast(colour, [0, 0, 0]);
}

function luminance(colour: Colour): number {
  const [red = 0, green = 0, blue = 0] = colour.map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
