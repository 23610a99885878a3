// Writes what an operator read as records of the format itself, so that it goes the way of every record.
import type { Sample } from "./bench.ts";
import type { SimulatedReading } from "./sweep.ts";

const IN = 0.0254;
const IN_H2O = 249.08891;
const CFM = 0.3048 ** 3 / 60;

/** The lines of a bench block; `repeat` relative, or left out so that it is pooled from the readings. */
export interface BenchLines {
  readonly repeat?: number;
  readonly settle?: number;
  readonly quick?: number;
  /** Pa. */
  readonly within: number;
}

export function benchBlock(id: string, { repeat, settle, quick, within }: BenchLines): string {
  return [
    `bench ${id}`,
    "  shows      flow",
    ...(repeat === undefined ? [] : [`  repeat     ${(100 * repeat).toFixed(4)} %`]),
    ...(settle === undefined ? [] : [`  settle     ${settle.toFixed(2)} s`]),
    ...(quick === undefined ? [] : [`  quick      ${quick.toFixed(2)} s`]),
    `  within     ${(within / IN_H2O).toFixed(3)} inH2O`,
    "",
  ].join("\n");
}

/** The port's geometry, so that the record knows where the curtain stops being the restriction. */
export const PORT_BLOCK = `port simulated
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       0.342 in
`;

export interface SessionLines {
  readonly target: number;
  /** m3/s at the target; none where 0. */
  readonly leak: number;
  readonly hasPort: boolean;
}

export function sessionBlock({ target, leak, hasPort }: SessionLines): string {
  const at = `${(target / IN_H2O).toFixed(3)} inH2O`;
  return `session 2026-03-02
${hasPort ? "  port       simulated\n" : ""}  target     ${at}
  air        20 degC 1000 hPa 40 %RH
  leak       ${leak === 0 ? "none" : `${(leak / CFM).toFixed(4)} cfm at ${at}`}
  entry      radiused
`;
}

/** A run with the readings in their order. */
export function runBlock(
  id: string,
  bench: string,
  readings: readonly SimulatedReading[],
  stage = "as cast",
): string {
  const rows = readings.map(({ lift, depression, flow, settle, read }) =>
    [
      (lift / IN).toFixed(3).padStart(10),
      (depression / IN_H2O).toFixed(3).padStart(18),
      (flow / CFM).toFixed(3).padStart(10),
      settle.toFixed(2).padStart(10),
      read.toFixed(2).padStart(8),
    ].join(" "),
  );
  return `run ${id}
  bench      ${bench}
  stage      "${stage}"
  lift[in]  depression[inH2O]  flow[cfm]  settle[s]  read[s]
${rows.join("\n")}
`;
}

/** Part of a sampled approach as a trace; flow and depression in it carry noise of their own already. */
export function traceBlock(lift: number, run: string, samples: readonly Sample[]): string {
  const rows = samples.map(
    ({ time, depression, flow }) =>
      `  ${time.toFixed(3)}  ${(depression / IN_H2O).toFixed(3)}  ${(flow / CFM).toFixed(3)}`,
  );
  return `trace ${(lift / IN).toFixed(3)} in of ${run}
  time[s]  depression[inH2O]  flow[cfm]
${rows.join("\n")}
`;
}
