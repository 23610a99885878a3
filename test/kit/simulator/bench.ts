// A bench that brings a port up to a depression: its controller in time, and what its meter shows meanwhile.
import { portFlow, type SimulatedPort, staysAttached, throatArea } from "./port.ts";

/** Times s, pressures Pa. */
export interface SimulatedBench {
  readonly deadTime: number;
  readonly controller: Controller;
  /** The blower pulls up no faster than this, Pa/s. */
  readonly rateLimit?: number;
  /** Time constant of the flow display; 0 shows flow as it is. */
  readonly meterLag: number;
  /** Share of what a letting port throws the depression up by that the blower does not catch at once. */
  readonly kick: number;
  /** Beside the port, m3/s at the target. */
  readonly leak: number;
}

/** `time` is the time constant; a second-order one has a natural frequency in rad/s and a damping. */
export type Controller =
  | { readonly order: 1; readonly time: number }
  | { readonly order: 2; readonly frequency: number; readonly damping: number };

export const QUICK_BENCH: SimulatedBench = {
  deadTime: 0.1,
  controller: { order: 1, time: 0.3 },
  meterLag: 0.05,
  kick: 0.5,
  leak: 0.0005,
};

export interface Sample {
  readonly time: number;
  readonly depression: number;
  /** As the meter shows it, leak and all, without its noise; m3/s. */
  readonly flow: number;
  readonly isAttached: boolean;
}

export interface ApproachInput {
  readonly port: SimulatedPort;
  readonly bench: SimulatedBench;
  readonly lift: number;
  readonly target: number;
  readonly density: number;
  /** Duration, s. */
  readonly time: number;
  /** Whether the flow is attached in the beginning; a valve that opens from shut begins attached. */
  readonly isAttached?: boolean;
  /** The depression in the beginning, Pa; 0 from shut. */
  readonly from?: number;
}

/** Step of the integration, s; the controllers of benches are slower by far. */
export const STEP = 0.02;

/** One lift from shut to its target, sampled at every step. */
export function approach(input: ApproachInput): readonly Sample[] {
  const { port, bench, lift, target, density, time } = input;
  const controller = stepper(bench, target, input.from ?? 0);
  const samples: Sample[] = [];
  let isAttached = input.isAttached ?? true;
  let shown = portFlow(port, lift, input.from ?? 0, density, isAttached);
  const throat = throatArea(port);
  for (let index = 0; index * STEP <= time; index++) {
    const { depression, rate } = controller.state;
    const flow = portFlow(port, lift, depression, density, isAttached);
    const stays = staysAttached(port, isAttached, { lift, speed: flow / throat, rate });
    if (stays !== isAttached) {
      const other = portFlow(port, lift, depression, density, stays);
      // A port that lets go takes less, and the blower pulls deeper until it is caught.
      controller.kick(depression * ((flow / other) ** 2 - 1) * bench.kick);
      isAttached = stays;
    }
    const passed = flow + bench.leak * Math.sqrt(Math.max(0, depression) / target);
    shown = bench.meterLag > 0 ? shown + (passed - shown) * (1 - Math.exp(-STEP / bench.meterLag)) : passed;
    samples.push({ time: index * STEP, depression, flow: shown, isAttached });
    if (index * STEP >= bench.deadTime) controller.step();
  }
  return samples;
}

interface Stepper {
  state: { readonly depression: number; readonly rate: number };
  readonly step: () => void;
  readonly kick: (by: number) => void;
}

function stepper(
  { controller, rateLimit = Number.POSITIVE_INFINITY }: SimulatedBench,
  target: number,
  from: number,
): Stepper {
  const stepper: Stepper = {
    state: { depression: from, rate: 0 },
    step: () => {
      const { depression, rate } = stepper.state;
      if (controller.order === 1) {
        // The exact step of a first-order lag, no faster than the blower can.
        const wanted = (target - depression) * (1 - Math.exp(-STEP / controller.time));
        const change = Math.min(wanted, rateLimit * STEP);
        stepper.state = { depression: depression + change, rate: change / STEP };
        return;
      }
      const next = secondOrder(depression, rate, target, controller.frequency, controller.damping);
      const limited = Math.min(next.rate, rateLimit);
      const change = Math.min(next.depression - depression, rateLimit * STEP);
      stepper.state = { depression: depression + change, rate: limited };
    },
    kick: (by) => {
      stepper.state = { ...stepper.state, depression: stepper.state.depression + by };
    },
  };
  return stepper;
}

/** One step of y'' = w²(target - y) - 2 z w y' by the classical Runge-Kutta method. */
function secondOrder(y: number, v: number, target: number, w: number, z: number) {
  const pull = (at: number, speed: number) => w * w * (target - at) - 2 * z * w * speed;
  const half = STEP / 2;
  const [v1, a1] = [v, pull(y, v)];
  const [v2, a2] = [v + half * a1, pull(y + half * v1, v + half * a1)];
  const [v3, a3] = [v + half * a2, pull(y + half * v2, v + half * a2)];
  const [v4, a4] = [v + STEP * a3, pull(y + STEP * v3, v + STEP * a3)];
  return {
    depression: y + (STEP / 6) * (v1 + 2 * v2 + 2 * v3 + v4),
    rate: v + (STEP / 6) * (a1 + 2 * a2 + 2 * a3 + a4),
  };
}

/** When the depression entered its band for good: one step after the last sample outside it (handbook section 12). */
export function settleTime(samples: readonly Sample[], target: number, band: number): number {
  const last = samples.findLastIndex(({ depression }) => Math.abs(depression - target) > band);
  return (last + 1) * STEP;
}
