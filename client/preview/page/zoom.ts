// A closer look at a part of the lift axis: by buttons and keys, and by drawing across the picture.
import type { Lifts, PreviewView } from "../../../shared/messages/preview.ts";
import { element, part } from "./element.ts";

/** What of the axis is shown, and all of it. */
type Shown = NonNullable<PreviewView["lifts"]>;

export interface Zoom {
  /** `answered` is what had been asked for when this was drawn. */
  readonly show: (lifts: Shown | null, answered: Lifts | null) => void;
}

/** How much of what is shown is left at each step, and how far a step aside goes. */
const CLOSER = 0.5;
const ASIDE = 0.25;
/** No closer than this share of the whole axis. */
const CLOSEST = 0.02;
/** A shorter way is a click. */
const LEAST_WAY = 6;

/** `plot` is where the lift axis lies on the page, and `middle` where a closer look is to be, as a share of it; `chosen` gets `null` for the whole axis. */
export function zoom(
  section: HTMLElement,
  holder: HTMLElement,
  plot: () => DOMRect | undefined,
  middle: () => number,
  chosen: (lifts: Lifts | null) => void,
): Zoom {
  const bar = part("zoom", HTMLElement);
  const closer = part("zoom-in", HTMLButtonElement);
  const wider = part("zoom-out", HTMLButtonElement);
  const all = part("zoom-all", HTMLButtonElement);
  let drawn: Shown | null = null;
  /** What was asked for last, so that quick steps add up; `isAnswered` once it is what is shown. */
  let asked: Lifts = [0, 1];
  let isAnswered = true;

  const ask = (lifts: Lifts): void => {
    if (drawn === null || isTooClose(lifts, drawn.whole)) return;
    const stretch = inside(lifts, drawn.whole);
    asked = stretch ?? drawn.whole;
    isAnswered = false;
    chosen(stretch);
  };
  const take = (from: number, to: number): void => ask(sliceOf(asked, from, to));
  const zoomIn = (): void => {
    if (drawn === null) return;
    const [at] = sliceOf(drawn.shown, middle(), 1);
    const share = (at - asked[0]) / (asked[1] - asked[0]);
    const from = Math.min(1 - CLOSER, Math.max(0, share - CLOSER / 2));
    take(from, from + CLOSER);
  };
  const zoomOut = (): void => take(0.5 - 0.5 / CLOSER, 0.5 + 0.5 / CLOSER);
  const whole = (): void => {
    if (drawn !== null) ask(drawn.whole);
  };
  const keys: Readonly<Record<string, () => void>> = {
    "+": zoomIn,
    "=": zoomIn,
    "-": zoomOut,
    "0": whole,
    ArrowLeft: () => take(-ASIDE, 1 - ASIDE),
    ArrowRight: () => take(ASIDE, 1 + ASIDE),
  };

  closer.addEventListener("click", zoomIn);
  wider.addEventListener("click", zoomOut);
  all.addEventListener("click", whole);
  // Keys count where the keyboard is at the picture or at these buttons, and nowhere else.
  for (const place of [section, bar]) {
    place.addEventListener("keydown", (event) => {
      const act = event.ctrlKey || event.altKey || event.metaKey ? undefined : keys[event.key];
      if (act === undefined || drawn === null) return;
      event.preventDefault();
      act();
    });
  }
  const plotOfLifts = () => (drawn === null ? undefined : plot());
  drawnAcross(holder, plotOfLifts, (from, to) => {
    if (drawn !== null) ask(sliceOf(drawn.shown, from, to));
  });

  return {
    show: (given, answered) => {
      drawn = given;
      isAnswered ||= answered === null || isSame(answered, asked);
      if (isAnswered) asked = given?.shown ?? asked;
      bar.hidden = given === null;
      const isWhole = given === null || isSame(given.shown, given.whole);
      // The keyboard is not lost with the button that it was on.
      if (isWhole && [wider, all].some((button) => button === document.activeElement)) section.focus();
      wider.hidden = isWhole;
      all.hidden = isWhole;
    },
  };
}

/** Marks what is drawn over while it is, and tells it as shares of the axis; a click is left to the picture. */
function drawnAcross(
  holder: HTMLElement,
  plot: () => DOMRect | undefined,
  drawn: (from: number, to: number) => void,
): void {
  const mark = element("div", "brush");
  mark.hidden = true;
  holder.after(mark);
  holder.addEventListener("pointerdown", ({ button, clientX: start, pointerId }) => {
    const box = plot();
    if (button !== 0 || box === undefined || start < box.left || start > box.right) return;
    const within = (x: number) => Math.min(box.right, Math.max(box.left, x));
    const moved = ({ clientX }: PointerEvent): void => {
      if (mark.hidden && Math.abs(clientX - start) < LEAST_WAY) return;
      // From now on it is no click: neither on a point nor on a text.
      holder.setPointerCapture(pointerId);
      const [left, right] = [start, within(clientX)].sort((a, b) => a - b);
      mark.hidden = false;
      mark.style.left = `${(left ?? 0) + scrollX}px`;
      mark.style.width = `${(right ?? 0) - (left ?? 0)}px`;
      mark.style.top = `${box.top + scrollY}px`;
      mark.style.height = `${box.height}px`;
    };
    const done = ({ type, clientX }: PointerEvent): void => {
      const isDrawn = !mark.hidden;
      mark.hidden = true;
      ending.abort();
      if (!isDrawn || type === "pointercancel") return;
      const [from = 0, to = 1] = [start, within(clientX)]
        .map((x) => (x - box.left) / box.width)
        .sort((a, b) => a - b);
      drawn(from, to);
    };
    const ending = new AbortController();
    const { signal } = ending;
    holder.addEventListener("pointermove", moved, { signal });
    for (const end of ["pointerup", "pointercancel"] as const) {
      holder.addEventListener(end, done, { signal });
    }
  });
}

/** From one share of a stretch to another, beyond its ends too. */
function sliceOf([low, high]: Lifts, from: number, to: number): Lifts {
  return [low + from * (high - low), low + to * (high - low)];
}

/** The stretch inside the whole axis, moved rather than cut; `null` where it is all of it. */
function inside([low, high]: Lifts, [least, most]: Lifts): Lifts | null {
  const span = high - low;
  if (!(span < most - least)) return null;
  const from = Math.min(Math.max(low, least), most - span);
  return [from, from + span];
}

function isTooClose([low, high]: Lifts, [least, most]: Lifts): boolean {
  return high - low < CLOSEST * (most - least);
}

function isSame(a: Lifts, b: Lifts): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
