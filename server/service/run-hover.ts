// What a run stands on: every settled value with the place that it came from.
import type { Stations } from "../../shared/model/model.ts";
import type { RunResult } from "../../shared/model/result.ts";
import type { Setup, Source } from "../../shared/model/setup.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { quantityWords, runFacts } from "../../shared/render/run-facts.ts";
import { inUnit, percent } from "../rules/words.ts";
import { escaped } from "./markdown.ts";

interface Entry {
  readonly label: string;
  /** As written in the record. */
  readonly words: string;
  /** Where it was stated; several where the words say several things. */
  readonly sources: readonly (Source | "readings")[];
}

/** Markdown for a run: a list of its settled values, each with its sources; all text of the record is escaped. */
export function runHover(result: RunResult): string {
  return [...factEntries(result), ...conditionEntries(result.setup), ...benchEntries(result)]
    .map(({ label, words, sources }) => {
      const from = [...new Set(sources)].join(", ");
      return `- ${label}: ${escaped(words)}${from === "" ? "" : ` *(${from})*`}`;
    })
    .join("\n");
}

/** What reports say of a run, but for what is said more fully below. */
function factEntries(result: RunResult): readonly Entry[] {
  const { setup } = result;
  const { run, date, air, statedAir, leak, entry, stub, adapter } = setup;
  const sources: Readonly<Record<string, Entry["sources"]>> = {
    port: [
      ...namedIn(setup, "port"),
      ...(run.cylinder === undefined ? [] : (["run"] as const)),
      setup.direction.source,
    ],
    stage: ["run"],
    date: sourcesOf(date),
    air: sourcesOf(statedAir ?? air),
    leak: sourcesOf(leak),
    mounting: [...sourcesOf(entry), ...sourcesOf(stub), ...sourcesOf(adapter)],
  };
  return runFacts(result)
    .filter(({ label }) => label !== "target" && label !== "bench")
    .map(({ label, words }) => ({ label, words, sources: sources[label] ?? [] }));
}

function conditionEntries(setup: Setup): readonly Entry[] {
  const { target, quote, within, reference, stations, head, engine, cam } = setup;
  const pressure = displayUnits(setup).depression;
  return [
    { label: "target", words: quantityWords(target.value), sources: [target.source] },
    { label: "within", words: inUnit(within.value, pressure), sources: [within.source] },
    ...(quote === target
      ? []
      : [{ label: "quoted at", words: quantityWords(quote.value), sources: [quote.source] }]),
    { label: "reference air", words: reference?.value.name ?? "none", sources: sourcesOf(reference) },
    ...(stations === undefined
      ? []
      : [{ label: "stations", words: stationWords(stations.value), sources: [stations.source] }]),
    ...(head === undefined ? [] : [{ label: "head", words: head.id, sources: ["port"] as const }]),
    ...(engine === undefined ? [] : [{ label: "engine", words: engine.id, sources: ["head"] as const }]),
    ...(cam === undefined ? [] : [{ label: "cam", words: cam.id, sources: ["engine"] as const }]),
  ];
}

function benchEntries({ setup, repeatability }: RunResult): readonly Entry[] {
  const { run, session, bench, liftSetting } = setup;
  const reference = run.bench ?? session?.bench;
  const missing = reference === undefined ? "not stated" : `${reference.id} not found`;
  const { deviation, source } = repeatability;
  return [
    { label: "bench", words: bench?.id ?? missing, sources: namedIn(setup, "bench") },
    {
      label: "repeatability",
      words: percent(deviation),
      sources: [source === "pooled" ? "readings" : source],
    },
    ...(bench?.uncertainty === undefined
      ? []
      : [
          {
            label: "flow scale (k = 2)",
            words: quantityWords(bench.uncertainty),
            sources: ["bench"] as const,
          },
        ]),
    {
      label: "lift setting",
      words: inUnit(liftSetting.value, displayUnits(setup).lift),
      sources: [liftSetting.source],
    },
  ];
}

function sourcesOf(settled: { readonly source: Source } | undefined): readonly Source[] {
  return settled === undefined ? [] : [settled.source];
}

/** Whether the run itself or its session names the thing. */
function namedIn({ run, session }: Setup, kind: "bench" | "port"): readonly Source[] {
  if (run[kind] !== undefined) return ["run"];
  return session?.[kind] === undefined ? [] : ["session"];
}

function stationWords({ first, last, step }: Stations): string {
  return `${quantityWords(first)} to ${quantityWords(last)} by ${quantityWords(step)}`;
}
