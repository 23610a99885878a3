// A port whose flow can be in two states: attached to its short side, or let go of it, with hysteresis between the two.

/** Lengths m, areas m2, speeds m/s of the mean flow in the throat, rates Pa/s. */
export interface SimulatedPort {
  readonly valve: number;
  readonly throat: number;
  readonly stem: number;
  /** Share of the curtain and of the throat that the flow fills. */
  readonly curtainShare: number;
  readonly throatShare: number;
  /** From this lift on the short side, attached or not, carries no more than it did there; never unless stated. */
  readonly flatFrom?: number;
  readonly edge?: PortEdge;
}

/** Where the flow lets go and where it comes back. */
export interface PortEdge {
  /** Never below this lift. */
  readonly lift: number;
  /** Lets go at this speed and above, where the depression rises at this rate or more. */
  readonly speed: number;
  readonly rate: number;
  /** Lets go at this lift and above, however gently; never unless stated. */
  readonly always?: number;
  /** What is left of the throat's share. */
  readonly left: number;
  /** Attaches again below this lift, or below this speed. */
  readonly back: { readonly lift: number; readonly speed: number };
}

/** A two-valve intake of an iron head, in metres, that has no edge. */
export const STABLE_PORT: SimulatedPort = {
  valve: 2.02 * 0.0254,
  throat: 1.78 * 0.0254,
  stem: 0.342 * 0.0254,
  curtainShare: 0.62,
  throatShare: 0.8,
};

/** The same port with a short side that is too abrupt: flat where it stays attached, lower by `drop` where it lets go. */
export function unstablePort(drop: number, edge: Partial<PortEdge> = {}): SimulatedPort {
  const port: SimulatedPort = { ...STABLE_PORT, flatFrom: 0.45 * 0.0254 };
  const lift = 0.475 * 0.0254;
  const left = shareForDrop(port, lift, drop);
  const back = { lift: 0.42 * 0.0254, speed: 12 };
  return { ...port, edge: { lift, speed: 50, rate: 1500, left, back, ...edge } };
}

/** Flow at a lift and a depression, m3/s of air of that density: curtain and throat one behind the other. */
export function portFlow(
  port: SimulatedPort,
  lift: number,
  depression: number,
  density: number,
  isAttached: boolean,
): number {
  const area = effectiveArea(port, lift, isAttached ? 1 : (port.edge?.left ?? 1));
  return depression > 0 ? area * Math.sqrt((2 * depression) / density) : 0;
}

/**
 * Two restrictions in series without recovery: 1/A² = 1/A1² + 1/A2² (handbook section 4.6; 500 and 800 mm2 make
 * 423.999).
 */
export function inSeries(first: number, second: number): number {
  return first > 0 && second > 0 ? 1 / Math.sqrt(1 / first ** 2 + 1 / second ** 2) : 0;
}

export function throatArea({ throat, stem }: SimulatedPort): number {
  return (Math.PI / 4) * (throat ** 2 - stem ** 2);
}

/** Whether the flow is attached a moment later. */
export function staysAttached(
  { edge }: SimulatedPort,
  isAttached: boolean,
  now: { readonly lift: number; readonly speed: number; readonly rate: number },
): boolean {
  if (edge === undefined) return true;
  if (!isAttached) return now.lift < edge.back.lift || now.speed < edge.back.speed;
  if (edge.always !== undefined && now.lift >= edge.always && now.speed >= edge.speed) return false;
  return now.lift < edge.lift || now.speed < edge.speed || now.rate < edge.rate;
}

function effectiveArea(port: SimulatedPort, lift: number, left: number): number {
  return inSeries(curtain(port, lift), port.throatShare * left * throatArea(port));
}

function curtain({ curtainShare, valve, flatFrom }: SimulatedPort, lift: number): number {
  return curtainShare * Math.PI * valve * Math.min(lift, flatFrom ?? lift);
}

/** The share of the throat's part that makes the port's flow at a lift drop by `drop`. */
function shareForDrop(port: SimulatedPort, lift: number, drop: number): number {
  const wanted = (1 - drop) * effectiveArea(port, lift, 1);
  const throat = 1 / Math.sqrt(1 / wanted ** 2 - 1 / curtain(port, lift) ** 2);
  return throat / (port.throatShare * throatArea(port));
}
