// How often one bench is said to hide what another shows: where it does, and where it does not.
import { type Rate, rateOf } from "../kit/binomial.ts";
import { QUICK_BENCH, type SimulatedBench } from "../kit/simulator/bench.ts";
import { judgeRecord } from "../kit/simulator/judged.ts";
import { type SimulatedPort, STABLE_PORT, unstablePort } from "../kit/simulator/port.ts";
import { type Normal, normals } from "../kit/simulator/random.ts";
import { benchBlock, PORT_BLOCK, runBlock, sessionBlock } from "../kit/simulator/record.ts";
import { sweep } from "../kit/simulator/sweep.ts";
import { QUICK } from "./detection.ts";
import { BAND, DENSITY, LIFTS, RUNS_A_RECORD, TARGET } from "./settings.ts";

export const HIDDEN_DROPS: readonly number[] = [0.01, 0.015, 0.02, 0.03, 0.04];
const HIDDEN_NOISES: readonly number[] = [0.002, 0.0035, 0.005];
const HIDDEN_REPEATS: readonly number[] = [1, 3];
/** Time constants of the other bench, s; on the first two the port lets go as it does on the quick one. */
export const OTHER_TIMES: readonly number[] = [0.3, 0.8, 1.6, 2.4, 3.2];

interface Pair {
  readonly port: SimulatedPort;
  /** Time constant of the second bench, s; the first is quick. */
  readonly time: number;
  readonly noise: number;
  readonly repeats: number;
  readonly seed: number;
}

export interface Hidden {
  readonly noise: number;
  readonly repeats: number;
  /** By the drops. */
  readonly rates: readonly Rate[];
}

/** A port that lets go on a quick bench and stays attached on one of a time constant of 3.2 s. */
export function hiddenDetection(pairs: number): readonly Hidden[] {
  return byDrop(pairs, 3.2, 7000);
}

/** The same port on two benches that are both quick: nothing is hidden, and what one resolves the other may miss by chance. */
export function shownByBoth(pairs: number): readonly Hidden[] {
  return byDrop(pairs, 0.3, 7500);
}

function byDrop(pairs: number, time: number, seed: number): readonly Hidden[] {
  return HIDDEN_NOISES.flatMap((noise, at) =>
    HIDDEN_REPEATS.map((repeats, index) => ({
      noise,
      repeats,
      rates: HIDDEN_DROPS.map((drop, which) =>
        saidToHide(
          { port: unstablePort(drop), time, noise, repeats, seed: seed + 100 * at + 10 * index + which },
          pairs,
        ),
      ),
    })),
  );
}

export interface HiddenBySpeed {
  readonly time: number;
  readonly unstable: Rate;
  readonly stable: Rate;
}

/** A port that lets go by 3 %, and a stable one, on a quick bench and on others. */
export function hiddenBySpeed(pairs: number): readonly HiddenBySpeed[] {
  return OTHER_TIMES.map((time, index) => {
    const common = { time, noise: 0.0035, repeats: 1 };
    return {
      time,
      unstable: saidToHide({ ...common, port: unstablePort(0.03), seed: 7900 + index }, pairs),
      stable: saidToHide({ ...common, port: STABLE_PORT, seed: 7950 + index }, pairs),
    };
  });
}

function saidToHide(pair: Pair, pairs: number): Rate {
  const normal = normals(pair.seed);
  const benches = ["quick", "other"].map((id) =>
    benchBlock(id, { repeat: pair.noise, quick: QUICK, within: BAND }),
  );
  const head = `headnote 1\n${benches.join("")}${PORT_BLOCK}${sessionBlock({ target: TARGET, leak: QUICK_BENCH.leak, hasPort: true })}`;
  const other: SimulatedBench = { ...QUICK_BENCH, controller: { order: 1, time: pair.time } };
  let said = 0;
  for (let done = 0; done < pairs; done += RUNS_A_RECORD / 2) {
    const count = Math.min(RUNS_A_RECORD / 2, pairs - done);
    const runs = Array.from(
      { length: count },
      (_, index) =>
        runBlock(`q${index}`, "quick", readings(pair, QUICK_BENCH, normal), `stage ${index}`) +
        runBlock(`o${index}`, "other", readings(pair, other, normal), `stage ${index}`),
    );
    const stages = judgeRecord(head + runs.join("")).filter(({ codes }) => codes.has("hidden-fall-back"));
    said += new Set(stages.map(({ id }) => id.slice(1))).size;
  }
  return rateOf(said, pairs);
}

function readings({ port, noise, repeats }: Pair, bench: SimulatedBench, normal: Normal) {
  return sweep({
    port,
    bench,
    operator: { kind: "waits", after: 0.5 },
    normal,
    lifts: LIFTS,
    repeats,
    target: TARGET,
    band: BAND,
    density: DENSITY,
    noise,
    liftNoise: 0.00001,
    edgeNoise: 0.15,
  });
}
