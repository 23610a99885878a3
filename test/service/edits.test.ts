// What is kept from one edit to the next changes nothing: a file is judged as one that is opened for the first time.
import fc from "fast-check";
import { expect, test } from "vitest";
import { memoryFiles } from "../../server/generate/example.ts";
import { DEFAULT_CONFIG } from "../../server/service/config.ts";
import { createService, type Service } from "../../server/service/service.ts";
import { brokenText, carelessFile } from "../kit/arbitraries.ts";
import { shopRecord } from "../kit/service.ts";
import { changed, textChange } from "../kit/text-changes.ts";

const ROWS = ["0.100  28.0  55.0", "0.200  27.9  108.0", "0.200  28.0  109.6", "0.400  28.0  105.1"];

function run(index: number): string {
  const stated = index % 3 === 0 ? "" : `  baseline r${index - 1}\n  stage "cut ${index % 4}"\n`;
  return `run r${index}\n${stated}  lift[in]  depression[inH2O]  flow[cfm]\n  ${ROWS.join("\n  ")}\n`;
}

const shop = shopRecord(`  ${ROWS.join("\n  ")}\n`);
const head = `headnote 1
include "shop.headnote"
session 2026-03-04
  bench north
  port intake
  target 28 inH2O
  air 71.5 degF 29.18 inHg 42 %RH
  leak none
`;
/** Without it the runs on the bench say together how well it repeats. */
const silentShop = shop.replace(/.*repeat.*\n/, "");
/** Long enough that an edit leaves runs far above and far below it as they were. */
const record = head + Array.from({ length: 40 }, (_, index) => run(index)).join("\n");

const { root } = memoryFiles([], "/");

function serve(texts: ReadonlyMap<string, string>): Service {
  const read = (path: string) => {
    const text = texts.get(path);
    return text === undefined ? { problem: "it is not there" } : { text };
  };
  return createService({ files: { root, read }, config: () => DEFAULT_CONFIG });
}

function told(service: Service, path: string): unknown {
  const checked = service.check(path);
  if ("problem" in checked) return checked;
  const { scope, settled, runs, traces, ladders } = checked.analysis;
  return {
    findings: checked.findings,
    placed: scope.file.placed,
    runs: scope.file.runs,
    others: scope.file.others,
    session: scope.file.session,
    names: scope.file.names,
    includes: scope.includes,
    settled,
    corrected: runs.map(({ result }) => result.rows.map(({ flow }) => flow?.corrected)),
    extras: [traces.length, ladders.length],
  };
}

type Edit = (text: string) => string;

const NAMES = ["r3", "r7", "r30", "i1", "north", "intake", "r1\n"];
/** One name put in the place of another, wherever that stands behind a place of the text. */
const renamed = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(...NAMES), fc.constantFrom(...NAMES))
  .map(([at, from, to]): Edit => {
    return (text) => {
      const start = Math.floor(at * text.length);
      return text.slice(0, start) + text.slice(start).replace(from, to);
    };
  });
const typed = textChange(
  "5",
  ".",
  "-",
  "run r3\n",
  "baseline r2\n",
  "trace 0.3 in of r1\n",
  'bench north "a"\n',
).map((change): Edit => {
  return (text) => changed(text, change);
});

function checkEdits(
  included: string,
  start: string,
  script: readonly (readonly [Edit, path: string])[],
): void {
  const texts = new Map([
    ["/shop.headnote", included],
    ["/record.headnote", start],
  ]);
  const service = serve(texts);
  service.check("/record.headnote");
  for (const [edit, path] of script) {
    texts.set(path, edit(texts.get(path) ?? ""));
    service.changed();
    expect(told(service, "/record.headnote")).toEqual(told(serve(texts), "/record.headnote"));
  }
}

test("a record is judged after any edits as if it had just been opened", () => {
  const start = fc.oneof(
    { weight: 3, arbitrary: fc.constant(record) },
    fc.oneof(carelessFile, brokenText).map((text) => head + text),
  );
  const path = fc.constantFrom("/record.headnote", "/record.headnote", "/shop.headnote");
  const script = fc.array(fc.tuple(fc.oneof(typed, renamed), path), { minLength: 1, maxLength: 4 });
  fc.assert(fc.property(fc.constantFrom(shop, silentShop), start, script, checkEdits), { numRuns: 25 });
});

test("repeats that are taken in one run change what is found in another", () => {
  const table = "  lift[in]  depression[inH2O]  flow[cfm]\n";
  const falling = `run b\n${table}  0.100  28.0  55.0\n  0.200  28.0  108.0\n  0.300  28.0  105.0\n`;
  const alike = "  0.100  28.0  55.0\n  0.100  28.0  55.1\n".repeat(4);
  const repeats = (last: string) => `${head}run a\n${table}${alike}  0.100  28.0  ${last}\n${falling}`;
  const texts = new Map([
    ["/shop.headnote", silentShop],
    ["/record.headnote", repeats("55.1")],
  ]);
  const service = serve(texts);
  const codes = () => {
    const checked = service.check("/record.headnote");
    return "problem" in checked ? [] : checked.findings.map(({ finding }) => finding.code);
  };
  expect(codes()).toContain("fall-back");
  texts.set("/record.headnote", repeats("59.0"));
  service.changed();
  expect(codes()).not.toContain("fall-back");
});

test("a trace that comes, moves and goes changes what is said of its run's flat top", () => {
  const swept = `${head}run r0\n  lift[in]  depression[inH2O]  flow[cfm]  settle[s]\n  0.300  28.0  150.0  1.3
  0.400  28.0  185.0  1.4\n  0.500  28.0  185.9  7.4\n  0.600  28.0  185.6  1.5\n`;
  const samples = Array.from({ length: 100 }, (_, at) => {
    const depression = 28 * -Math.expm1(-at / 3.5);
    return `  ${at / 10}  ${depression.toFixed(2)}  ${(35 * Math.sqrt(depression)).toFixed(1)}\n`;
  });
  const trace = `trace 0.600 in of r0\n  time[s]  depression[inH2O]  flow[cfm]\n${samples.join("")}`;
  const flatTop = (service: Service) => {
    const checked = service.check("/record.headnote");
    const found = "problem" in checked ? [] : checked.findings;
    const flat = found.find(({ finding }) => finding.code === "flat-top");
    return [flat?.severity, flat?.finding.related.at(-1)?.span.line];
  };
  const texts = new Map([["/shop.headnote", shop.replace(/\n.*repeat/, "\n  quick 2 s$&")]]);
  const service = serve(texts);
  const lines = (text: string) => text.split("\n").length - 1;
  for (const [text, expected] of [
    [swept, ["warning", lines(swept) - 1]],
    [swept + trace, ["hint", lines(swept)]],
    [`${swept}\n\n${trace}`, ["hint", lines(swept) + 2]],
    [`${swept}\n\n${trace.replace("0.600", "0.300")}`, ["warning", lines(swept) - 1]],
    [swept, ["warning", lines(swept) - 1]],
  ] as const) {
    texts.set("/record.headnote", text);
    service.changed();
    expect(flatTop(service)).toEqual(expected);
  }
});
