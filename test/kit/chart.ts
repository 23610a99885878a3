// Charts of records written in a line or two, and what stands in them.
import { expect } from "vitest";
import type { RowResult, RunResult } from "../../shared/model/result.ts";
import { type ChartOptions, chartSpec } from "../../shared/render/chart.ts";
import { LABEL_SIZE } from "../../shared/render/chart-layers.ts";
import type { ChartRun } from "../../shared/render/chart-run.ts";
import { HARD_SPACE, textWidth } from "../../shared/render/chart-text.ts";
import { evaluateText } from "./evaluate.ts";

export const SHOP = `bench north
  shows      flow
  repeat     0.35 %
  settle     1.6 s
  quick      2 s
port p
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in
session 2026-11-20
  bench      north
  port       p
  air        71.5 degF 29.18 inHg 42 %RH
  leak       none
`;
export const FALLING_BACK = [58.4, 125.6, 187.4, 229.8, 226.1, 224.9];

export type Row = Readonly<Record<string, unknown>>;

export function runText(id: string, flows: readonly (number | string)[], lines = ""): string {
  const rows = flows.map((flow, at) => `  ${((at + 1) / 10).toFixed(3)}  28.0  ${flow}`);
  return `run ${id}\n${lines}  lift[in]  depression[inH2O]  flow[cfm]\n${rows.join("\n")}\n`;
}

export function runsOf(text: string): readonly RunResult[] {
  return evaluateText(`${SHOP}${text}`).runs;
}

export function charted(
  result: RunResult,
  role: ChartRun["role"] = "main",
  more: { label?: string; findings?: ReadonlyMap<RowResult, readonly string[]> } = {},
): ChartRun {
  return { result, role, label: more.label ?? result.setup.run.id, findings: more.findings ?? new Map() };
}

export function chartOf(text: string, options?: ChartOptions) {
  return chartSpec(
    runsOf(text).map((result, at) => charted(result, at === 0 ? "main" : "compared")),
    options,
  );
}

export function dataOf(spec: Row, name: string): readonly Row[] {
  const { datasets } = spec as { readonly datasets: Readonly<Record<string, readonly Row[]>> };
  return datasets[name] ?? [];
}

export function textsOf(spec: Row): readonly unknown[] {
  return dataOf(spec, "labels").map((label) => label["text"]);
}

export function notesOf(spec: Row): string {
  return dataOf(spec, "notes")
    .map(({ text }) => text)
    .join(" ")
    .replaceAll(HARD_SPACE, " ");
}

/** Panels as Vega-Lite will lay them out, with their scales. */
export function panelsOf(spec: Row) {
  type Channel = { readonly scale: { readonly domain: readonly [number, number] }; readonly axis: Row };
  const all = (spec["vconcat"] ?? spec["concat"]) as readonly {
    readonly width: number;
    readonly height: number;
    readonly encoding: { readonly x: Channel; readonly y: Channel };
  }[];
  return all.slice(0, -1);
}

/** Every layer of a specification, with its mark and its data's name. */
export function layersOf(spec: Row): readonly Row[] {
  return (spec["vconcat"] as readonly Row[]).flatMap(
    (panel) => (panel["layer"] as readonly Row[] | undefined) ?? [panel],
  );
}

/** The labels of each panel and the symbols that they may not cover, by the names of their data. */
const LABELLED = [
  { labels: "labels", symbols: ["points", "crosses", "keys"] },
  { labels: "difference-labels", symbols: ["differences", "difference-keys"] },
  { labels: "settle-labels", symbols: ["settles"] },
] as const;
/** Half of what a symbol takes at least, in pixels. */
const HALF_SYMBOL = 2.5;

interface Box {
  readonly what: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Labels keep off each other and off every symbol, and stay inside the picture, in every panel. */
export function checkLabelsApart(spec: Row, outer: number): void {
  for (const { labels, symbols } of LABELLED) {
    const panel = panelsOf(spec).find((entry) =>
      layersOf({ vconcat: [entry] }).some((layer) => nameOf(layer) === labels),
    );
    if (panel === undefined) continue;
    const [x0, x1] = panel.encoding.x.scale.domain;
    const [y0, y1] = panel.encoding.y.scale.domain;
    const place = (row: Row) => ({
      x: ((Number(row["x"]) - x0) / (x1 - x0)) * panel.width,
      y: panel.height * (1 - (Number(row["y"]) - y0) / (y1 - y0)),
    });
    const texts = dataOf(spec, labels).map((row): Box => {
      const { x, y } = place(row);
      const what = String(row["text"]);
      return {
        what,
        left: x,
        right: x + textWidth(what, LABEL_SIZE),
        top: y - LABEL_SIZE / 2,
        bottom: y + LABEL_SIZE / 2,
      };
    });
    const signs = symbols.flatMap((name) =>
      dataOf(spec, name).map((row): Box => {
        const { x, y } = place(row);
        const [left, right, top, bottom] = [
          x - HALF_SYMBOL,
          x + HALF_SYMBOL,
          y - HALF_SYMBOL,
          y + HALF_SYMBOL,
        ];
        return { what: name, left, right, top, bottom };
      }),
    );
    texts.forEach((text, at) => {
      expect(text.left).toBeGreaterThanOrEqual(-1e-6);
      // 16 of padding to either side, 44 or more for the numbers of the flow axis.
      expect(text.right, text.what).toBeLessThanOrEqual(outer - 2 * 16 - 44 + 1e-6);
      if (labels === "labels") {
        expect(text.top).toBeGreaterThanOrEqual(0);
        expect(text.bottom).toBeLessThanOrEqual(panel.height);
      }
      for (const other of [...texts.slice(at + 1), ...signs]) {
        expect(isApart(text, other), `${text.what} on ${other.what}`).toBe(true);
      }
    });
  }
}

function nameOf(layer: Row): unknown {
  return (layer["data"] as Row | undefined)?.["name"];
}

function isApart(a: Box, b: Box): boolean {
  const least = 1e-6;
  return (
    a.right <= b.left + least ||
    b.right <= a.left + least ||
    a.bottom <= b.top + least ||
    b.bottom <= a.top + least
  );
}
