// Gathers what all records say of each bench.
import { type BenchInput, benchReports } from "../../shared/calc/bench/bench-report.ts";
import type { BenchVisit } from "../../shared/calc/bench/bench-visits.ts";
import type { Bench } from "../../shared/model/model.ts";
import type { BenchPage } from "../../shared/render/bench-text.ts";
import { benchUnits } from "../../shared/render/bench-units.ts";
import { plateChecksOf } from "../analysis/plate-checks.ts";
import type { Analysis } from "../analysis/project.ts";

interface Found {
  readonly bench: Bench;
  readonly visits: BenchVisit[];
}

/** Adds records one by one and makes the pages of all benches in the end, by the benches' names. */
export interface BenchPages {
  readonly add: (shown: string, analysis: Analysis) => void;
  readonly pages: () => readonly BenchPage[];
  /** How many runs named no bench that could be found. */
  readonly homeless: () => number;
}

/** Benches are told apart by where they are described, since two shops may use one name. */
export function benchPages(): BenchPages {
  const found = new Map<string, Found>();
  let homeless = 0;
  return {
    add: (shown, analysis) => {
      const { scope, runs } = analysis;
      const visits = new Map<string, { readonly bench: Bench; visit: BenchVisit }>();
      const date = scope.file.session?.entity.date;
      const visitOf = (bench: Bench) => {
        const key = `${scope.locate("bench", bench.id)?.path ?? ""} ${bench.id}`;
        const known = visits.get(key) ?? { bench, visit: { file: shown, date, runs: [], plates: [] } };
        visits.set(key, known);
        return known;
      };
      for (const { result } of runs) {
        const { bench } = result.setup;
        if (bench === undefined) {
          homeless += 1;
          continue;
        }
        const known = visitOf(bench);
        known.visit = { ...known.visit, runs: [...known.visit.runs, result] };
      }
      for (const { result } of plateChecksOf(analysis)) {
        const { bench } = result.setup;
        if (bench === undefined) continue;
        const known = visitOf(bench);
        known.visit = { ...known.visit, plates: [...known.visit.plates, result] };
      }
      for (const [key, { bench, visit }] of visits) {
        const all = found.get(key) ?? { bench, visits: [] };
        found.set(key, all);
        all.visits.push(visit);
      }
    },
    homeless: () => homeless,
    pages: () => {
      const inputs = [...found.values()].sort((a, b) => (a.bench.id < b.bench.id ? -1 : 1)).map(inputOf);
      const reports = benchReports(inputs);
      return inputs.flatMap(({ units }, index) => {
        const report = reports[index];
        return report === undefined ? [] : [{ report, units }];
      });
    },
  };
}

function inputOf({ bench, visits }: Found): BenchInput & Pick<BenchPage, "units"> {
  const ordered = [...visits].sort(byDate);
  return { visits: { bench, visits: ordered }, units: benchUnits({ bench, visits: ordered }) };
}

function byDate(a: BenchVisit, b: BenchVisit): number {
  const [first, second] = [a, b].map(({ date, file }) => `${date ?? "~"} ${file}`);
  return (first ?? "") < (second ?? "") ? -1 : 1;
}
