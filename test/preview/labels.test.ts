// Measures words and signs of every picture of the samples as a browser sets them, in its own font, from narrow to wide.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { diskFiles } from "../../server/disk/disk-files.ts";
import { exampleFiles, FIRST_EXAMPLE_FILE, memoryFiles } from "../../server/generate/example.ts";
import { tracedRun } from "../../server/rules/examples.ts";
import { blockPictures } from "../../server/service/block-pictures.ts";
import type { ChartedRecord } from "../../server/service/chart-runs.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { previewView } from "../../server/service/preview.ts";
import { picks } from "../../server/service/preview-choice.ts";
import { createService, type Service } from "../../server/service/service.ts";
import type { Choice } from "../../shared/messages/preview.ts";
import { type OpenPage, type Pages, PLAIN, startPages } from "./page.ts";

const SAMPLES = join(import.meta.dirname, "../../samples");
const WIDTHS = [320, 500, 760, 1600];
/** A box of words is as high as the font; letters fill less of it. In pixels at top and bottom. */
const AIR = 2;

vi.setConfig({ testTimeout: 120_000 });

interface Box {
  readonly what: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface Measured {
  readonly picture: Box;
  /** Direct labels and notes; numbers and titles of axes; the picture's title. */
  readonly labels: readonly Box[];
  readonly around: readonly Box[];
  /** What is seen of the points. */
  readonly points: readonly Box[];
}

let pages: Pages;
let opened: OpenPage;
beforeAll(async () => {
  pages = await startPages();
  opened = await pages.open({ path: join(SAMPLES, "first.headnote") }, { width: 1700 });
  await opened.page.locator("#picture svg").waitFor();
}, 60_000);
afterAll(() => pages.stop());

/** In the page, and in its own words: the tests know no page. */
const MEASURE = `(() => {
  const svg = document.querySelector("#picture svg");
  const box = (node, what) => {
    const { left, right, top, bottom } = node.getBoundingClientRect();
    return { what, left, right, top, bottom };
  };
  const words = (selector) => [...svg.querySelectorAll(selector)]
    .filter((node) => node.textContent !== "")
    .map((node) => box(node, node.textContent));
  const isSeen = (node) => {
    const { stroke, fill } = node.style.stroke === "" ? { stroke: node.getAttribute("stroke"), fill: node.getAttribute("fill") } : node.style;
    return stroke !== "transparent" || (fill !== "transparent" && fill !== "none");
  };
  return {
    picture: box(svg, "picture"),
    labels: words(".mark-text.role-mark text"),
    around: words(".role-axis-label text, .role-axis-title text, .role-title-text text"),
    points: [...svg.querySelectorAll(".mark-symbol.role-mark path")].filter(isSeen).map((node) => box(node, node.getAttribute("aria-label") ?? "a point")),
  };
})()`;

function onDisk(path: string): ChartedRecord {
  return opening(createService({ files: diskFiles(), config: () => DEFAULT_CONFIG }), path);
}

function opening(service: Service, path: string): ChartedRecord {
  const checked = service.check(path);
  if ("problem" in checked) throw new Error(checked.problem);
  return { analysis: checked.analysis, findings: checked.findings, service };
}

let version = 1;
async function measured(record: ChartedRecord, choice: Choice, width: number): Promise<Measured> {
  const colours = { kind: "light", background: "#ffffff", text: "#222222", font: "" } as const;
  const wish = { ...PLAIN, line: null, shown: null, choice, look: { width, colours } };
  const view = previewView(record, wish, version++, (each) => each);
  const uri = `file://${record.analysis.scope.file.path}`;
  await opened.tell({ type: "show", state: { ...PLAIN, uri }, view });
  await opened.page.waitForFunction(
    `document.querySelector("#picture svg")?.textContent.includes(${JSON.stringify(lastNote(view.spec))})`,
  );
  return opened.page.evaluate<Measured>(MEASURE);
}

/** Words that stand in the picture when it is there. */
function lastNote(spec: Readonly<Record<string, unknown>> | null): string {
  const { datasets } = (spec ?? {}) as {
    readonly datasets?: { readonly notes?: readonly { text: string }[] };
  };
  return datasets?.notes?.at(-1)?.text ?? "";
}

function overlap(a: Box, b: Box): boolean {
  const air = (box: Box) => ({ ...box, top: box.top + AIR, bottom: box.bottom - AIR });
  const [one, other] = [air(a), air(b)];
  return (
    one.left < other.right - 0.5 &&
    other.left < one.right - 0.5 &&
    one.top < other.bottom &&
    other.top < one.bottom
  );
}

function faults({ picture, labels, around, points }: Measured): readonly string[] {
  const words = [...labels, ...around];
  const clipped = words.filter(
    ({ left, right, top, bottom }) =>
      left < picture.left - 0.5 ||
      right > picture.right + 0.5 ||
      top < picture.top - 0.5 ||
      bottom > picture.bottom + 0.5,
  );
  const collisions = labels.flatMap((label, at) =>
    [...labels.slice(at + 1), ...around, ...points]
      .filter((other) => overlap(label, other))
      .map((other) => [label, other]),
  );
  const numbers = around.flatMap((one, at) =>
    around
      .slice(at + 1)
      .filter((other) => overlap(one, other))
      .map((other) => [one, other]),
  );
  return [
    ...clipped.map(({ what }) => `clipped: ${what}`),
    ...[...collisions, ...numbers].map(([a, b]) => `'${a?.what}' on '${b?.what}'`),
  ];
}

/** All faults in all pictures of a record, a run by itself left out: it has the least to say. */
async function faultsOf(record: ChartedRecord): Promise<readonly string[]> {
  const { analysis } = record;
  // A bench whose display is not computed yet has nothing to draw.
  if (!analysis.runs.some(({ result }) => result.rows.some(({ flow }) => flow !== undefined))) return [];
  const offered = picks(analysis, blockPictures(analysis)).map(({ choice }) => choice);
  const choices = offered.filter(({ kind }) => kind !== "run" && kind !== "cursor");
  const found: string[] = [];
  for (const choice of [{ kind: "cursor" } as const, ...choices]) {
    for (const width of WIDTHS) {
      const seen = await measured(record, choice, width);
      expect(seen.labels.length).toBeGreaterThan(0);
      expect(seen.around.length).toBeGreaterThan(6);
      expect(seen.picture.right - seen.picture.left).toBeGreaterThan(0.9 * width - 40);
      found.push(...faults(seen).map((fault) => `${JSON.stringify(choice)} at ${width}: ${fault}`));
    }
  }
  return found;
}

const records = readdirSync(SAMPLES, { recursive: true, encoding: "utf8" }).filter((file) =>
  file.endsWith(".headnote"),
);

test("a word on another, on a point or beyond the edge is a fault", async () => {
  const seen = await measured(onDisk(join(SAMPLES, "first.headnote")), { kind: "cursor" }, 760);
  const [label, other] = [seen.labels[0], seen.points[0]];
  if (label === undefined || other === undefined) throw new Error("a label and a point");
  expect(faults(seen)).toEqual([]);
  const moved = { ...label, left: other.left, right: other.right + 5, top: other.top, bottom: other.bottom };
  expect(faults({ ...seen, labels: [...seen.labels.slice(1), moved] })).not.toEqual([]);
  const beyond = { ...label, right: seen.picture.right + 9 };
  expect(faults({ ...seen, labels: [...seen.labels.slice(1), beyond] })).toContain(`clipped: ${label.what}`);
});

describe("no word collides, is clipped or covers a point", () => {
  test.each(records)("in the pictures of %s", async (file) => {
    expect(await faultsOf(onDisk(join(SAMPLES, file)))).toEqual([]);
  });

  test("where a trace lets go twice, a ladder has a kink, and places stand close", async () => {
    const times = Array.from({ length: 300 }, (_, at) => at / 100);
    const samples = times.map((time) => {
      const depression = 28 * -Math.expm1(-time / 0.2);
      const lost = (time > 0.9 && time < 1.6 ? 0.06 : 0) + (time > 2.2 ? 0.04 : 0);
      // Numbers that look like noise, the same at each run.
      const noise = 0.003 * Math.sin(time * 12_345);
      const flow = 36.9 * Math.sqrt(depression) * (1 - lost) * (1 + noise);
      return `  ${time.toFixed(2)}  ${depression.toFixed(2)}  ${flow.toFixed(2)}\n`;
    });
    const steps = [3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 28, 32, 36, 40].map((depression) => {
      const flow = 36.9 * Math.sqrt(Math.min(depression, 18)) * Math.max(1, depression / 18) ** 0.3;
      return `  ${depression.toFixed(1)}  ${flow.toFixed(1)}\n`;
    });
    const places = Array.from({ length: 399 }, (_, at) => {
      const [x, y] = [at % 21, Math.floor(at / 21)];
      const speed = Math.max(5, 300 * (1 - ((x - 10) / 11) ** 4 - ((y - 9) / 10) ** 2));
      return `  ${(0.08 * x).toFixed(2)}  ${(0.08 * y).toFixed(2)}  ${speed.toFixed(0)}\n`;
    });
    const text = `${tracedRun(0, [])}${samples.join("")}
ladder 0.500 in of r1
  depression[inH2O]  flow[cfm]
${steps.join("")}
map "close" of r1
  x[in]  y[in]  velocity[ft/s]
${places.join("")}`;
    const service = createService({
      files: memoryFiles(exampleFiles(text), ""),
      config: () => DEFAULT_CONFIG,
    });
    const record = opening(service, FIRST_EXAMPLE_FILE);
    expect(record.analysis.traces[0]?.result.steps).toHaveLength(3);
    expect(record.analysis.ladders[0]?.result.kink).toBeDefined();
    expect(await faultsOf(record)).toEqual([]);
  });
});
