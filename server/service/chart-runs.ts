// Chooses the runs that a chart shows and the part that each plays in it.
import { areCylinders } from "../../shared/calc/cylinders.ts";
import type { ChartRun } from "../../shared/render/chart-run.ts";
import type { ComputedRun } from "../analysis/project.ts";
import type { Judged } from "./findings.ts";
import { rowFindings } from "./row-findings.ts";
import type { Checked, Service } from "./service.ts";

/** A record and the service that read it, which knows the files that baselines stand in. */
export interface ChartedRecord extends Checked {
  readonly service: Pick<Service, "check">;
}

/** A run in a chart, and where it stands. */
export interface ChartedRun extends ChartRun {
  readonly placed: ComputedRun["placed"];
}

interface FoundRun {
  readonly run: ComputedRun;
  readonly findings: readonly Judged[];
}

/**
 * The picked runs, the first of them leading, and the baselines that they state, greyed, wherever these are defined. A
 * picked run that is another one's baseline is greyed too, unless it has a baseline of its own: it is a stage on the way
 * then. Runs are named by their stage, with their id where that leaves two alike, else by their id. Where all picked runs
 * are cylinders of one stage they are equals, named by their numbers, and no baselines join in.
 */
export function chartRuns(record: ChartedRecord, picked: readonly ComputedRun[]): readonly ChartedRun[] {
  if (areCylinders(picked.map(({ result }) => result.setup))) {
    return picked.map((run) => ({
      placed: run.placed,
      result: run.result,
      label: `cylinder ${run.placed.entity.cylinder}`,
      role: "compared",
      findings: rowFindings(run, record.findings),
    }));
  }
  const baselines = new Map<string, FoundRun>();
  for (const { placed } of picked) {
    const id = placed.entity.baseline?.id;
    const found = id === undefined || id === placed.entity.id ? undefined : findRun(record, id);
    if (found !== undefined) baselines.set(keyOf(found.run), found);
  }
  const isStage = (run: ComputedRun) =>
    !baselines.has(keyOf(run)) || run.placed.entity.baseline !== undefined;
  const stages = picked.filter(isStage).map((run) => ({ run, findings: record.findings }));
  for (const { run } of stages) baselines.delete(keyOf(run));
  const shown = [...stages, ...baselines.values()];
  const labels = labelsOf(shown);
  return shown.map(({ run, findings }, index) => ({
    placed: run.placed,
    result: run.result,
    label: labels[index] ?? "",
    role: index >= stages.length ? "baseline" : index === 0 ? "main" : "compared",
    findings: rowFindings(run, findings),
  }));
}

function findRun({ analysis, findings, service }: ChartedRecord, id: string): FoundRun | undefined {
  const place = analysis.scope.locate("run", id);
  if (place === undefined) return undefined;
  const checked =
    place.path === analysis.scope.file.path ? { analysis, findings } : service.check(place.path);
  if ("problem" in checked) return undefined;
  const run = checked.analysis.runs.find(({ placed }) => placed.start === place.start);
  return run && { run, findings: checked.findings };
}

function keyOf({ placed }: ComputedRun): string {
  return `${placed.path}:${placed.start}`;
}

function labelsOf(runs: readonly FoundRun[]): readonly string[] {
  const byStage = Map.groupBy(runs, ({ run }) => run.placed.entity.stage);
  return runs.map(({ run }) => {
    const { id, stage } = run.placed.entity;
    if (stage === undefined) return id;
    return (byStage.get(stage)?.length ?? 0) > 1 ? `${stage} (${id})` : stage;
  });
}
