// Settles every value that a run's results stand on: from the run, else the session, else what they name, else a default.
import type {
  Bench,
  Cam,
  Conditions,
  Direction,
  Entities,
  NamedKind,
  Port,
  Reference,
  Run,
  Session,
} from "../model/model.ts";
import type { AirState, Settled, Setup } from "../model/setup.ts";
import { type Quantity, quantity } from "../quantity/quantity.ts";
import { findUnit, type Unit } from "../quantity/unit.ts";
import { airState, defaultAir, namedAir } from "./air-state.ts";

/** Finds what a name stands for among the files that a run can see. */
export type Find = <K extends NamedKind>(kind: K, id: string) => Entities[K] | undefined;

/** Depression of a session that states none (common practice, no published source). */
export const DEFAULT_TARGET: Quantity = quantity("28", 28, 1, unit("inH2O"));
/** Share of the target that a depression may be off where no band is stated (common practice). */
const DEFAULT_WITHIN = 0.01;
/** Standard uncertainty of a set lift where the bench states none, m (common practice: a thousandth of an inch). */
const DEFAULT_LIFT_SETTING = 2.54e-5;

/** Whether a run states any of its conditions itself; runs of one session that do not stand on the same things. */
export function hasOwnConditions(run: Run): boolean {
  const { bench, port, target, quote, within, reference, air } = run;
  const { leak, adapter, entry, stub, stations, direction, date } = run;
  const before = bench ?? port ?? target ?? quote ?? within ?? reference ?? air;
  return (before ?? leak ?? adapter ?? entry ?? stub ?? stations ?? direction ?? date) !== undefined;
}

/** Settles the runs of one file; what runs without conditions of their own stand on is settled once. */
export function settler(session: Session | undefined, find: Find): (run: Run) => Setup {
  let shared: Setup | undefined;
  return (run) => {
    if (hasOwnConditions(run)) return settle(run, session, find);
    shared ??= settle(run, session, find);
    return { ...shared, run };
  };
}

/** The settled set-up of a run; `session` is the one of the run's own file. Never throws; what is not found is missing. */
export function settle(run: Run, session: Session | undefined, find: Find): Setup {
  const first = <K extends keyof Conditions>(key: K) => firstStated(key, run, session);
  const bench = found("bench", first("bench")?.value, find);
  const port = found("port", first("port")?.value, find);
  const head = found("head", port?.of, find);
  const engine = found("engine", head?.engine, find);
  const target = first("target") ?? { value: DEFAULT_TARGET, source: "default" };
  const statedAir = first("air");
  const state = statedAir && airState(statedAir.value);
  const reference = first("reference");
  const referenceAir = reference && namedAir(reference.value);
  return {
    run,
    session,
    bench,
    port,
    head,
    engine,
    cam: engine && camOf(engine.cams, port, find),
    date: dateOf(run, session),
    direction: directionOf(run, port),
    target,
    quote: first("quote") ?? target,
    within: bandOf(run, session, bench, target.value),
    statedAir,
    air: airOf(state, statedAir?.source),
    reference: reference && referenceAir && { value: referenceAir, source: reference.source },
    leak: first("leak"),
    adapter: first("adapter"),
    entry: first("entry"),
    stub: first("stub"),
    stations: first("stations"),
    liftSetting:
      bench?.liftSetting === undefined
        ? { value: DEFAULT_LIFT_SETTING, source: "default" }
        : { value: bench.liftSetting.value, source: "bench" },
    benchAir: bench?.shows?.in && namedAir(bench.shows.in),
  };
}

function firstStated<K extends keyof Conditions>(
  key: K,
  run: Run,
  session: Session | undefined,
): Settled<Exclude<Conditions[K], undefined>> | undefined {
  const own = (run as Conditions)[key];
  if (own !== undefined) return { value: own as Exclude<Conditions[K], undefined>, source: "run" };
  const shared = (session as Conditions | undefined)?.[key];
  if (shared !== undefined) return { value: shared as Exclude<Conditions[K], undefined>, source: "session" };
  return undefined;
}

function found<K extends NamedKind>(
  kind: K,
  reference: Reference | undefined,
  find: Find,
): Entities[K] | undefined {
  return reference === undefined ? undefined : find(kind, reference.id);
}

/** The engine's cam for the port's side. */
function camOf(cams: readonly Reference[], port: Port | undefined, find: Find): Cam | undefined {
  const known = cams.flatMap((reference) => find("cam", reference.id) ?? []);
  return known.find((cam) => cam.side !== undefined && cam.side === port?.side);
}

function dateOf(run: Run, session: Session | undefined): Settled<string> | undefined {
  if (run.date !== undefined) return { value: run.date, source: "run" };
  return session?.date === undefined ? undefined : { value: session.date, source: "session" };
}

/** Intake ports are drawn through and exhaust ports blown through unless a run says otherwise. */
function directionOf(run: Run, port: Port | undefined): Settled<Direction> {
  if (run.direction !== undefined) return { value: run.direction, source: "run" };
  return {
    value: port?.side === "exhaust" ? "blows" : "draws",
    source: port?.side === undefined ? "default" : "port",
  };
}

function bandOf(
  run: Run,
  session: Session | undefined,
  bench: Bench | undefined,
  target: Quantity,
): Settled<number> {
  const stated = firstStated("within", run, session);
  if (stated !== undefined) return { value: stated.value.value, source: stated.source };
  if (bench?.within !== undefined) return { value: bench.within.value, source: "bench" };
  return { value: DEFAULT_WITHIN * target.value, source: "default" };
}

function airOf(
  state: AirState | undefined,
  source: Settled<unknown>["source"] | undefined,
): Settled<AirState> {
  return state === undefined || source === undefined
    ? { value: defaultAir, source: "default" }
    : { value: state, source };
}

function unit(symbol: string): Unit {
  const known = findUnit(symbol);
  if (known === undefined) throw new RangeError(`${symbol} is in the table of units`);
  return known.unit;
}
