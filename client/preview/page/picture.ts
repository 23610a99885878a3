// The picture on show: takes new readings where it stands, and is made anew only where more than these has changed.
import type { View } from "vega-view";
import { CURSOR_PARAM } from "../../../shared/render/chart-layers.ts";
import { isDark, parseColour } from "../../../shared/render/colour.ts";
import { sameButData } from "../../../shared/render/same-but-data.ts";
import { type Spec, viewOf } from "./drawing.ts";

/** The reading that a mark stands for: its run, and its line counted from the run's heading. */
export interface Mark {
  readonly run: string;
  readonly line: number;
}

export interface Picture {
  /** Settles once the picture is on the page; rejects what cannot be drawn, and leaves what was there. */
  readonly show: (spec: Spec) => Promise<void>;
  /** Rings a reading, or none. */
  readonly ring: (mark: Mark | undefined) => void;
  /** Where the plots lie on the page, side by side with nothing but their axes. */
  readonly plot: () => DOMRect | undefined;
  /** Where along the plot the ringed reading stands, as a share of it; the middle where none does. */
  readonly ringed: () => number;
  readonly clear: () => void;
}

export function picture(holder: HTMLElement, chosen: (mark: Mark, isDouble: boolean) => void): Picture {
  let shown: { readonly spec: Spec; readonly view: View; readonly frame: Element } | undefined;
  let ringed = "";
  let latest = 0;

  const exchange = async (view: View, before: Spec, spec: Spec): Promise<void> => {
    const rows = datasetsOf(spec);
    const old = datasetsOf(before);
    for (const [name, data] of Object.entries(rows)) {
      if (JSON.stringify(data) !== JSON.stringify(old[name])) view.data(name, data);
    }
    await view.runAsync();
    tellApart(holder);
  };

  const make = async (spec: Spec): Promise<void> => {
    const turn = ++latest;
    const frame = document.createElement("div");
    frame.className = "frame";
    const view = viewOf(spec, frame);
    for (const type of ["click", "dblclick"]) {
      view.addEventListener(type, (_, item) => {
        const mark = markOf(item?.datum);
        if (mark !== undefined) chosen(mark, type === "dblclick");
      });
    }
    if (hasCursor(spec)) view.signal(CURSOR_PARAM, ringed);
    await view.runAsync();
    // A later picture may have been quicker.
    if (turn !== latest) {
      view.finalize();
      return;
    }
    const paper = parseColour(String(spec["background"]), [255, 255, 255]);
    frame.classList.toggle("is-dark", paper !== undefined && isDark(paper));
    holder.replaceChildren(frame);
    if (shown === undefined) performance.mark("first-picture");
    tellApart(frame);
    shown?.view.finalize();
    shown = { spec, view, frame };
  };

  return {
    show: async (spec) => {
      if (shown === undefined || !sameButData(shown.spec, spec)) return make(spec);
      latest++;
      const { view, frame, spec: before } = shown;
      shown = { spec, view, frame };
      await exchange(view, before, spec);
    },
    ring: (mark) => {
      ringed = mark === undefined ? "" : `${mark.run}:${mark.line}`;
      if (shown !== undefined && hasCursor(shown.spec)) {
        shown.view.signal(CURSOR_PARAM, ringed).runAsync();
      }
    },
    plot: () => holder.querySelector(".concat_0_group .background")?.getBoundingClientRect(),
    ringed: () => shareOf(shown?.spec, ringed) ?? 0.5,
    clear: () => {
      latest++;
      shown?.view.finalize();
      shown = undefined;
      holder.replaceChildren();
    },
  };
}

/** The library gives the container of marks the role of a mark without a name, which readers would stumble over. */
function tellApart(frame: Element): void {
  for (const group of frame.querySelectorAll('g[role="graphics-symbol"]')) {
    group.setAttribute("role", "graphics-object");
  }
}

/** Where on the lift axis a point stands that is inside the plot. */
function shareOf(spec: Spec | undefined, point: string): number | undefined {
  const [panel] = (spec?.["vconcat"] ?? []) as readonly LiftPanel[];
  const [low, high] = panel?.encoding.x.scale.domain ?? [];
  const rows = Object.values(datasetsOf(spec ?? {})).flat() as readonly Readonly<Record<string, unknown>>[];
  const x = rows.find((row) => row["point"] === point)?.["x"];
  if (point === "" || low === undefined || high === undefined || typeof x !== "number") return undefined;
  return (x - low) / (high - low);
}

interface LiftPanel {
  readonly encoding: { readonly x: { readonly scale: { readonly domain: readonly [number, number] } } };
}

function datasetsOf({ datasets }: Spec): Readonly<Record<string, readonly unknown[]>> {
  return (datasets ?? {}) as Readonly<Record<string, readonly unknown[]>>;
}

function hasCursor({ params }: Spec): boolean {
  return Array.isArray(params) && params.some((param) => param?.name === CURSOR_PARAM);
}

function markOf(datum: unknown): Mark | undefined {
  if (typeof datum !== "object" || datum === null) return undefined;
  const { run, line } = datum as Readonly<Record<string, unknown>>;
  return typeof run === "string" && typeof line === "number" ? { run, line } : undefined;
}
