// What reading at once costs, and what the state that flow is left in does to a sweep up and down.
import type { Rate } from "../kit/binomial.ts";
import { QUICK_BENCH, type SimulatedBench } from "../kit/simulator/bench.ts";
import { portFlow, type SimulatedPort, STABLE_PORT, unstablePort } from "../kit/simulator/port.ts";
import { judgedSweeps, rateWith } from "./detection.ts";
import { DENSITY, LIFTS, TARGET } from "./settings.ts";

const IN_H2O = 249.08891;

export interface ByOperator {
  readonly operator: string;
  readonly time: number;
  readonly lag: number;
  /** Mean error of the stations' corrected flow, relative, without noise. */
  readonly error: number;
}

/** A stable port; the display of flow lags behind the depression. */
export function byOperator(): readonly ByOperator[] {
  const operators = [
    { name: "waits for the band and half a second", operator: { kind: "waits", after: 0.5 } },
    { name: "reads at 27.8 for 28 inH2O", operator: { kind: "at once", within: 0.2 * IN_H2O } },
    { name: "reads at 27 for 28 inH2O", operator: { kind: "at once", within: IN_H2O } },
  ] as const;
  return operators.flatMap(({ name, operator }, at) =>
    [0.3, 1.6].flatMap((time) =>
      [0.05, 0.5].map((lag): ByOperator => {
        const bench: SimulatedBench = { ...QUICK_BENCH, controller: { order: 1, time }, meterLag: lag };
        const [run] = judgedSweeps(
          { port: STABLE_PORT, bench, noise: 0, repeats: 1, operator, seed: 3000 + at, liftNoise: 0 },
          1,
        );
        const errors = (run?.result.rising ?? []).map(
          ({ lift, flow }) => flow / portFlow(STABLE_PORT, lift, TARGET, DENSITY, true) - 1,
        );
        return {
          operator: name,
          time,
          lag,
          error: errors.reduce((sum, one) => sum + one, 0) / errors.length,
        };
      }),
    ),
  );
}

export interface UpAndDown {
  readonly port: string;
  readonly noise: number;
  readonly differs: Rate;
  readonly fallBack: Rate;
}

/** The blower runs on: flow lets go at 0.525 in whatever the rate, and comes back only below 0.420 in. */
export function upAndDown(sweeps: number): readonly UpAndDown[] {
  const ways = [...LIFTS, ...LIFTS.slice(0, -1).reverse()];
  const ports: readonly (readonly [string, SimulatedPort])[] = [
    ["stable", STABLE_PORT],
    ...[0.01, 0.02, 0.04].map(
      (drop) => [`lets go by ${100 * drop} %`, unstablePort(drop, { always: 0.525 * 0.0254 })] as const,
    ),
  ];
  return ports.flatMap(([port, simulated], at) =>
    [0.0035, 0.007].map((noise, index) => {
      const judged = judgedSweeps(
        {
          port: simulated,
          bench: QUICK_BENCH,
          noise,
          repeats: 1,
          operator: { kind: "waits", after: 0.5 },
          seed: 3100 + 10 * at + index,
          lifts: ways,
          isBlowing: true,
        },
        sweeps,
      );
      return {
        port,
        noise,
        differs: rateWith(judged, "direction-dependent"),
        fallBack: rateWith(judged, "fall-back"),
      };
    }),
  );
}
