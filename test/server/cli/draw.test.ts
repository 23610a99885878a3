import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawPng, drawSvg } from "../../../server/cli/draw.ts";
import { evaluateRun as evaluateSetup } from "../../../shared/calc/evaluate.ts";
import { type ChartOptions, chartSpec } from "../../../shared/render/chart.ts";
import { evaluateRun } from "../../kit/evaluate.ts";

const RECORD = `bench b
  shows      flow
  repeat     0.35 %
run r "as cast & <raw>"
  bench      b
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
  0.100     28.0                58.4      1.4
  0.200     28.0               125.6      1.5
  0.300     28.0               120.1      2.4
`;

function specOf(label: string, options?: ChartOptions) {
  return chartSpec([{ result: evaluateRun(RECORD), label, role: "main", findings: new Map() }], options);
}

/** A PNG begins with eight fixed bytes, then the header chunk: width and height, four bytes each (ISO/IEC 15948, 5.2 and 11.2.2). */
function checkPng(png: Uint8Array, width: number, height: number) {
  expect([...png.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  const view = new DataView(png.buffer, png.byteOffset);
  expect([view.getUint32(16), view.getUint32(20)]).toEqual([width, height]);
}

function sizeOf(svg: string): readonly [number, number] {
  const [, width, height] = /^<svg [^>]*width="(\d+)" height="(\d+)"/.exec(svg) ?? [];
  return [Number(width), Number(height)];
}

describe("drawSvg", () => {
  test("says what it is to those who do not see it", async () => {
    const svg = await drawSvg(specOf("r"));
    expect(svg).toMatch(/^<svg role="img" /);
    expect(svg).toContain("<title>r: as cast &amp; &lt;raw></title>".replace("raw>", "raw&gt;"));
    expect(svg).toMatch(/<desc>r: as cast [^<]*<\/desc>/);
    expect(svg).not.toContain("<script");
  });

  test.each([360, 760, 1400])("is as wide as asked for: %i", async (width) => {
    expect(sizeOf(await drawSvg(specOf("r", { width })))[0]).toBe(width);
  });

  test("draws what says that there is nothing to draw", async () => {
    expect(await drawSvg(chartSpec([]))).toContain("No run to draw");
  });
});

describe("drawPng", () => {
  test("has twice the size of the drawing, or what is asked for", async () => {
    const svg = await drawSvg(specOf("r"));
    const [width, height] = sizeOf(svg);
    checkPng(await drawPng(svg), 2 * width, 2 * height);
    checkPng(await drawPng(svg, 1), width, height);
  });

  test("reads every drawing, whatever its texts", async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "binary", maxLength: 40 }), async (label) => {
        const result = evaluateRun(RECORD);
        const setup = { ...result.setup, run: { ...result.setup.run, title: label } };
        const titled = evaluateSetup(setup, result.repeatability);
        const both = [
          { result: titled, label, role: "main", findings: new Map() },
          { result, label: `${label}2`, role: "compared", findings: new Map() },
        ] as const;
        const svg = await drawSvg(chartSpec(both, { width: 280 }));
        checkPng(await drawPng(svg, 1), ...sizeOf(svg));
      }),
      { numRuns: 10 },
    );
  }, 30_000);
});
