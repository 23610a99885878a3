// The preview's page: shows what it is told, and tells what a hand does on it.
import {
  type Axes,
  axesSchema,
  choiceSchema,
  type FromPage,
  type PreviewState,
  type PreviewView,
  type ToPage,
  toPageSchema,
} from "../../../shared/messages/preview.ts";
import { titledSvg } from "../../../shared/render/titled-svg.ts";
import { type Spec, viewOf } from "./drawing.ts";
import { element, part, shownText } from "./element.ts";
import { findingsList } from "./findings-list.ts";
import { lineButton, type Reveal } from "./line-button.ts";
import { readLook, watchLook } from "./look.ts";
import { fillPicker } from "./picker.ts";
import { picture } from "./picture.ts";
import { type ResultsTable, resultsTable } from "./results-table.ts";
import { saying } from "./saying.ts";
import { unitChoices } from "./unit-choices.ts";
import { zoom } from "./zoom.ts";

/** What the editor gives to a page. */
declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  setState(state: PreviewState): void;
};

const editor = acquireVsCodeApi();
const tell = (message: FromPage): void => editor.postMessage(message);

const page = part("page", HTMLElement);
const holder = part("drawing", HTMLElement);
const problem = part("problem", HTMLElement);
const summary = part("summary", HTMLElement);
const facts = part("facts", HTMLElement);
const findings = part("findings", HTMLElement);
const results = part("tables", HTMLElement);
const allColumns = part("all-columns", HTMLButtonElement);
const picker = part("picker", HTMLSelectElement);
const axis = part("axis", HTMLSelectElement);
const cd = part("cd", HTMLSelectElement);
const pin = part("pin", HTMLButtonElement);
const more = part("more", HTMLButtonElement);
const say = saying(part("live", HTMLElement));

let shown: { readonly state: PreviewState; readonly view: PreviewView } | undefined;
/** What the picture on the page is of, dimmed or not. */
let drawn: string | undefined;
let cursor: number | null = null;
let tables: readonly ResultsTable[] = [];

const showUnits = unitChoices(part("units", HTMLElement), (units) => tellAxes({ units }));
const reveal: Reveal = (line, focus) => tell({ type: "reveal", run: null, line, focus });
const drawing = picture(holder, ({ run, line }, focus) => tell({ type: "reveal", run, line, focus }));
const zooming = zoom(part("picture", HTMLElement), holder, drawing.plot, drawing.ringed, (lifts) =>
  tell({ type: "zoom", lifts }),
);

// --- what is told to the page -------------------------------------------------------------------------------

addEventListener("message", ({ data }) => {
  const message = toPageSchema.safeParse(data);
  if (message.success) heard(message.data).catch(failed);
});

async function heard(message: ToPage): Promise<void> {
  switch (message.type) {
    case "show":
      return show(message.state, message.view);
    case "unreadable":
      dim(message.text, null, drawn !== undefined);
      return;
    case "cursor":
      if (message.uri === shown?.state.uri) moveCursor(message.line);
      return;
    case "draw":
      return draw(message);
    default:
      return message satisfies never;
  }
}

async function show(state: PreviewState, view: PreviewView): Promise<void> {
  const before = shown;
  const isSame = before?.state.uri === state.uri;
  if (isSame && view.version >= 0 && view.version < before.view.version) return;
  shown = { state, view };
  editor.setState(state);
  showControls(state, view);
  if (view.spec === null && view.isBroken && drawn === pictureOf(state, view)) {
    dim(view.problem?.text ?? "", view.problem?.line ?? null, true);
    findings.replaceChildren(...findingsList(view, reveal));
    return;
  }
  showWords(view);
  if (view.spec === null) {
    drawing.clear();
    zooming.show(null, null);
    drawn = undefined;
    dim(view.problem?.text ?? "", view.problem?.line ?? null, false);
    return;
  }
  problem.hidden = true;
  page.classList.remove("is-stale");
  const { spec } = view;
  await drawing.show(spec);
  if (shown?.view !== view) return;
  drawn = pictureOf(state, view);
  zooming.show(view.lifts, state.lifts);
  moveCursor(cursor);
  say(spokenWords(view));
}

/** A record, and of it a trace, a ladder or a map where that is shown instead of a curve. */
function pictureOf({ uri }: PreviewState, { shows, runs: [shown] }: PreviewView): string {
  return shows === "curve" ? uri : `${uri}#${shown?.id}`;
}

function showControls(state: PreviewState, view: PreviewView): void {
  part("name", HTMLElement).textContent = shownText(view.name);
  fillPicker(picker, view.picks, state.choice);
  axis.value = state.axis;
  axis.disabled = !view.hasRatio;
  cd.value = state.cd;
  cd.disabled = view.shows !== "curve";
  showUnits(view.units, state.units);
  pin.setAttribute("aria-pressed", String(state.isPinned));
}

function showWords(view: PreviewView): void {
  const sentences = view.summary.map((words) => element("p", "", words));
  summary.replaceChildren(...sentences);
  facts.replaceChildren(
    ...view.facts.flatMap(({ label, words }) => [element("dt", "", label), element("dd", "", words)]),
  );
  findings.replaceChildren(...findingsList(view, reveal));
  if (tables.length !== view.tables.length) {
    tables = view.tables.map(() => resultsTable(reveal, view.tables.length > 1));
    results.replaceChildren(...tables.map(({ root }) => root));
  }
  for (const [index, table] of view.tables.entries()) tables[index]?.show(table);
  allColumns.hidden = !view.tables.some(({ columns }) => columns.some(({ isAside }) => isAside));
}

/** Says why there is no new picture; what was drawn before stays, faint, where `keeps` says so. */
function dim(words: string, line: number | null, keeps: boolean): void {
  page.classList.toggle("is-stale", keeps);
  problem.hidden = false;
  const lead = keeps ? "Last good drawing. " : "";
  const where =
    line === null ? [] : [lineButton(line, `Line ${line + 1}`, `go to line ${line + 1}`, reveal), ": "];
  problem.replaceChildren(lead, ...(keeps ? where : []), shownText(words));
  say(`${lead}${line === null ? "" : `Line ${line + 1}: `}${words}`);
}

function moveCursor(line: number | null): void {
  cursor = line;
  const run = shown?.view.runs.find(
    (each) => each.uri === shown?.state.uri && line !== null && line >= each.line && line <= each.last,
  );
  drawing.ring(run === undefined || line === null ? undefined : { run: run.id, line: line - run.line });
  for (const table of tables) table.mark(line);
}

function spokenWords({ name, summary: [words], findings: list, moreFindings }: PreviewView): string {
  const count = list.length + moreFindings;
  const found = count === 0 ? "no findings" : `${count} ${count === 1 ? "finding" : "findings"}`;
  return `${name} drawn: ${words ?? "no readings"}, ${found}`;
}

async function draw({ ticket, format, spec }: Extract<ToPage, { type: "draw" }>): Promise<void> {
  const view = viewOf(spec as Spec);
  try {
    const data =
      format === "svg"
        ? titledSvg(await view.toSVG(), spec)
        : ((await view.toCanvas(2)).toDataURL("image/png").split(",")[1] ?? "");
    tell({ type: "drawn", ticket, data });
  } finally {
    view.finalize();
  }
}

function failed(error: unknown): void {
  const words = error instanceof Error ? error.message : String(error);
  dim("This picture cannot be drawn; the log says why.", null, drawn !== undefined);
  tell({ type: "failed", message: words.slice(0, 500) });
}

// --- what a hand does on the page ---------------------------------------------------------------------------

picker.addEventListener("change", () => {
  const choice = choiceSchema.safeParse(JSON.parse(picker.value));
  if (choice.success) tell({ type: "choose", choice: choice.data });
});
axis.addEventListener("change", () => tellAxes({ axis: axis.value }));
cd.addEventListener("change", () => tellAxes({ cd: cd.value }));
more.addEventListener("click", () => turnOver(more, "aria-expanded"));
allColumns.addEventListener("click", () => turnOver(allColumns, "aria-pressed"));
pin.addEventListener("click", () => {
  tell({ type: "pin", isPinned: pin.getAttribute("aria-pressed") !== "true" });
});
part("reset", HTMLButtonElement).addEventListener("click", () => tell({ type: "reset" }));
part("copy", HTMLButtonElement).addEventListener("click", () => tell({ type: "copy" }));
for (const format of ["svg", "png", "csv", "vega-lite"] as const) {
  part(`save-${format}`, HTMLButtonElement).addEventListener("click", () => tell({ type: "save", format }));
}

function turnOver(button: HTMLElement, attribute: string): void {
  button.setAttribute(attribute, String(button.getAttribute(attribute) !== "true"));
}

/** What is shown now, but for what was just chosen. */
function tellAxes(chosen: { readonly [Name in keyof Axes]?: unknown }): void {
  if (shown === undefined) return;
  const { axis, cd, units } = shown.state;
  const axes = axesSchema.safeParse({ axis, cd, units, ...chosen });
  if (!axes.success) return;
  // What is chosen next adds to it, though its answer may still be under way.
  shown = { ...shown, state: { ...shown.state, ...axes.data } };
  tell({ type: "axes", axes: axes.data });
}

let look = "";
function tellLook(type: "ready" | "look"): void {
  const now = readLook(holder);
  if (JSON.stringify(now) === look) return;
  look = JSON.stringify(now);
  tell({ type, look: now });
}
watchLook(holder, () => tellLook("look"));
tellLook("ready");
