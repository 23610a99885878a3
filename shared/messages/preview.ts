// What the preview's page, the extension and the server say to each other; every message is checked where it arrives.
import * as z from "zod/mini";

/** Client to server: a record as the preview shows it. */
export const PREVIEW = "headnote/preview";
/** Client to server: what the preview shows, as a file that stands alone. */
export const PREVIEW_FILE = "headnote/previewFile";

/** Longest text that a page may ask with; a font family with many names is the longest that is meant. */
const LONGEST = 1000;
const NARROWEST = 280;
const WIDEST = 4000;

const text = z.string();
const short = z.string().check(z.maxLength(LONGEST));
/** Of a file, from 0. */
const line = z.int().check(z.nonnegative());
const version = z.int();

/**
 * What is shown: the run, trace, ladder or map of the cursor; all runs of the record, all cylinders of one stage, one run by
 * its id; or one trace, ladder or map by what it is called.
 */
export const choiceSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("cursor") }),
  z.strictObject({ kind: z.literal("all") }),
  z.strictObject({ kind: z.literal("stage"), stage: short }),
  z.strictObject({ kind: z.literal("run"), id: short }),
  z.strictObject({ kind: z.literal("block"), id: short }),
]);

/** Units that are offered in place of the record's own, by what they are units of; symbols of the format's table. */
export const OFFERED_UNITS = {
  lift: ["in", "mm"],
  flow: ["cfm", "L/s", "L/min", "m3/h", "m3/min"],
  depression: ["inH2O", "mmH2O", "Pa", "hPa", "kPa", "mbar", "psi"],
} as const;

/** What a picture can be of. */
export const PICTURES = ["curve", "trace", "ladder", "map"] as const;

const axes = {
  axis: z.enum(["lift", "lift-ratio"]),
  cd: z.enum(["curtain", "gap", "throat", "head"]),
  /** Each in place of the record's own unit of its kind; a panel of a version that had none was left without. */
  units: z._default(z.array(z.enum(Object.values(OFFERED_UNITS).flat())).check(z.maxLength(8)), []),
};

/** Two lifts in m, the lower first. */
const stretch = z
  .tuple([z.number(), z.number()])
  .check(z.refine(([low, high]) => low < high, "the lower comes first"));

/** The part of the lift axis that is shown; `null` for all of it. */
const lifts = z._default(z.nullable(stretch), null);

/** How results are drawn and told: over which lift, with the coefficient on which area, in which units. */
export const axesSchema = z.strictObject(axes);

/** What the page is like: its width in pixels, and the editor's colours as CSS writes them. */
const lookSchema = z.strictObject({
  width: z.int().check(z.gte(NARROWEST), z.lte(WIDEST)),
  colours: z.strictObject({
    kind: z.enum(["light", "dark", "high-contrast-light", "high-contrast-dark"]),
    background: short,
    text: short,
    font: short,
  }),
});

/** What a reload of the window brings back. */
export const previewStateSchema = z.strictObject({
  uri: short,
  isPinned: z.boolean(),
  choice: choiceSchema,
  ...axes,
  lifts,
});

// --- asked of the server ------------------------------------------------------------------------------------

const askedSchema = {
  uri: z.string(),
  /** Of the cursor. */
  line: z.nullable(line),
  /** What is on show, which stays where the cursor stands in none. */
  shown: z.nullable(z.string()),
  choice: choiceSchema,
  ...axes,
  lifts,
};

export const previewParams = z.strictObject({ ...askedSchema, look: lookSchema });
export const previewFileParams = z.strictObject({
  ...askedSchema,
  format: z.enum(["csv", "markdown", "vega-lite"]),
});
/** The file's name without its ending, and its text; nothing where there is no run. */
export const previewFileAnswer = z.nullable(z.strictObject({ name: text, text }));

/** `isAside`: shown where there is room. */
const column = z.strictObject({ title: text, unit: text, isNumber: z.boolean(), isAside: z.boolean() });
const factSchema = z.strictObject({ label: text, words: text });
const findingSchema = z.strictObject({
  line,
  severity: z.enum(["error", "warning", "hint"]),
  code: text,
  message: text,
  help: text,
});
const tableSchema = z.strictObject({
  title: text,
  head: text,
  columns: z.array(column),
  /** Rows whose numbers stand in another file have no line. */
  rows: z.array(z.strictObject({ line: z.nullable(line), cells: z.array(text) })),
  /** Rows that are not shown, because there are too many. */
  more: z.int(),
  averages: z.strictObject({ columns: z.array(column), rows: z.array(z.array(text)) }),
  summary: z.array(text),
});

export const previewViewSchema = z.strictObject({
  /** Of the document, as the server knew it; -1 where it is not open. */
  version,
  name: text,
  picks: z.array(z.strictObject({ choice: choiceSchema, label: text })),
  /** The runs that are shown, the leading one first, or the trace, ladder or map, with the file, first and last line of each. */
  runs: z.array(z.strictObject({ id: text, uri: text, line, last: line })),
  /** What the picture is: flow on lift, which alone has a choice of axes, or one of the others. */
  shows: z.enum(PICTURES),
  /** Whether lift can be shown over the valve's diameter. */
  hasRatio: z.boolean(),
  /** The units of the leading run: as it was written, as it is shown, and what else there is. */
  units: z.array(
    z.strictObject({
      name: z.enum(["lift", "flow", "depression"]),
      own: text,
      shown: text,
      offers: z.array(text),
    }),
  ),
  /** All of the picture's lift axis, and what of it is shown. */
  lifts: z.nullable(z.strictObject({ whole: stretch, shown: stretch })),
  /** The picture in Vega-Lite; nothing where no point can be drawn. */
  spec: z.nullable(z.record(z.string(), z.unknown())),
  /** Why nothing can be drawn, and the line that is to blame. */
  problem: z.nullable(z.strictObject({ text, line: z.nullable(line) })),
  /** Whether the picture that was drawn last is still worth looking at. */
  isBroken: z.boolean(),
  /** What is shown in a sentence or two, the first the most telling. */
  summary: z._default(z.array(text), []),
  facts: z.array(factSchema),
  findings: z.array(findingSchema),
  moreFindings: z.int(),
  tables: z.array(tableSchema),
});

/** What the server answers: the record, or why it cannot be read. */
export const previewAnswer = z.union([previewViewSchema, z.strictObject({ unreadable: text })]);

// --- between the extension and its page ---------------------------------------------------------------------

/** Extension to page. */
export const toPageSchema = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("show"), state: previewStateSchema, view: previewViewSchema }),
  /** The record cannot be read at all, or there is none. */
  z.strictObject({ type: z.literal("unreadable"), text }),
  /** Where the cursor stands in the record that is shown. */
  z.strictObject({ type: z.literal("cursor"), uri: text, line: z.nullable(line) }),
  /** Asks for a picture of a specification. */
  z.strictObject({
    type: z.literal("draw"),
    ticket: z.int(),
    format: z.enum(["svg", "png"]),
    spec: z.record(z.string(), z.unknown()),
  }),
]);

export const FILE_FORMATS = ["svg", "png", "csv", "vega-lite"] as const;

/** Page to extension. */
export const fromPageSchema = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("ready"), look: lookSchema }),
  z.strictObject({ type: z.literal("look"), look: lookSchema }),
  z.strictObject({ type: z.literal("choose"), choice: choiceSchema }),
  z.strictObject({ type: z.literal("axes"), axes: axesSchema }),
  z.strictObject({ type: z.literal("zoom"), lifts }),
  /** Everything as it is without a choice. */
  z.strictObject({ type: z.literal("reset") }),
  z.strictObject({ type: z.literal("pin"), isPinned: z.boolean() }),
  /** A line of the record, or of the block of the run that is named. `focus` moves the keyboard there too. */
  z.strictObject({ type: z.literal("reveal"), run: z.nullable(short), line, focus: z.boolean() }),
  z.strictObject({ type: z.literal("save"), format: z.enum(FILE_FORMATS) }),
  z.strictObject({ type: z.literal("copy") }),
  /** A picture that was asked for: text of an SVG, or a PNG in base 64. */
  z.strictObject({ type: z.literal("drawn"), ticket: z.int(), data: z.string() }),
  z.strictObject({ type: z.literal("failed"), message: short }),
]);

export type Choice = z.infer<typeof choiceSchema>;
export type Axes = z.infer<typeof axesSchema>;
export type Lifts = z.infer<typeof stretch>;
export type PreviewState = z.infer<typeof previewStateSchema>;
export type Look = z.infer<typeof lookSchema>;
export type PreviewParams = z.infer<typeof previewParams>;
export type PreviewFileParams = z.infer<typeof previewFileParams>;
export type PreviewFileAnswer = z.infer<typeof previewFileAnswer>;
export type PreviewView = z.infer<typeof previewViewSchema>;
export type PictureKind = (typeof PICTURES)[number];
export type PreviewTable = z.infer<typeof tableSchema>;
export type ToPage = z.infer<typeof toPageSchema>;
export type FromPage = z.infer<typeof fromPageSchema>;
