// What hovering over a trace's or a ladder's heading says.
import { expect, test } from "vitest";
import { tracedRun } from "../../server/rules/examples.ts";
import { hover } from "../../server/service/hover.ts";
import { open } from "../kit/service.ts";

function hoverText(fixture: string): string {
  const { analysis, position } = open(fixture);
  // Markdown escapes say nothing here.
  return (hover(analysis, position)?.text ?? "").replaceAll(/\\(.)/g, "$1");
}

test("a trace's heading shows when it settled, the approach, the steady window and the letting-go", () => {
  const text = hoverText(tracedRun(0.05).replace("trace 0.500", "tr$0ace 0.500"));
  expect(text).toContain("- samples: 22, 0.1 s apart, up to 2.1 s");
  expect(text).toContain("- settled: after 1.5 s within 0.28 inH2O of 28 inH2O");
  expect(text).toMatch(/- approach: first order, dead time [^,]+ s, time constant 0\.\d+ ± 0\.\d+ s/);
  expect(text).toMatch(/- steady: 1\.\d to 2\.1 s: 2[78]\.\d+ ± 0\.\d+ inH2O .*; corrected flow 185\.\d+ ± /);
  expect(text).toMatch(/- let go: at 1\.3 s and 27\.5 inH2O, rising: apparent area -4\.\d+ ± 0\.\d+ %/);
});

test("a trace of a display that stands still has its value, no scatter, and says what it was searched for", () => {
  const rows = Array.from({ length: 40 }, (_, at) => `  ${at / 10} 28.0 195.2`).join("\n");
  const head = tracedRun(0).slice(0, tracedRun(0).indexOf("trace"));
  const text = hoverText(`${head}tr$0ace 0.500 in of r1\n  time[s] depression[inH2O] flow[cfm]\n${rows}\n`);
  expect(text).toContain(
    "- steady: 0 to 3.9 s: 28 inH2O (every sample alike); corrected flow 195.2 cfm (every sample alike)",
  );
  expect(text).toContain(
    "- let go: not seen: no step of the apparent area of 0.5 % or more above 40 % of the target",
  );
});

test("a ladder's heading shows its exponent and what a port gives", () => {
  const rows = [8, 12, 16, 20, 24, 28].map((at) => `  ${at}.0 ${(36 * Math.sqrt(at)).toFixed(1)}`).join("\n");
  const head = tracedRun(0).slice(0, tracedRun(0).indexOf("trace"));
  const text = hoverText(`${head}lad$0der 0.500 in of r1\n  depression[inH2O] flow[cfm]\n${rows}\n`);
  expect(text).toMatch(
    /- exponent: 0\.500 ± 0\.0\d\d \(95 %\); a port gives 0\.47\d to 0\.500: as a port does/,
  );
});

test("a trace whose run is not there shows what a trace is, and nothing more", () => {
  const text = hoverText(tracedRun(0).replace("trace 0.500 in of r1", "tr$0ace 0.500 in of r9"));
  expect(text).toContain("Opens a trace");
  expect(text).not.toContain("samples:");
});

test("what was computed of a trace is kept while the file changes elsewhere", () => {
  const fixture = tracedRun(0.05);
  const first = open(fixture).analysis.traces[0];
  expect(first?.result.steps).toHaveLength(1);
  const { analysis, analyse } = open(fixture);
  expect(analysis.traces[0]?.result).toBe(analyse("main.headnote").traces[0]?.result);
});
