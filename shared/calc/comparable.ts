// Whether two runs may be laid side by side, and if not, what stands between them.
import type { Port } from "../model/model.ts";
import type { Setup } from "../model/setup.ts";
import type { Quantity } from "../quantity/quantity.ts";

/** What must be alike for two runs to be compared. */
export type Condition =
  | "side"
  | "direction"
  | "target"
  | "quote"
  | "reference"
  | "adapter"
  | "entry"
  | "stub"
  | "valve";

/** A condition in which two runs differ, as each states it. */
export interface Mismatch {
  readonly what: Condition;
  readonly own: string;
  readonly theirs: string;
}

const NOT_STATED = "not stated";
const ROUNDING = 1e-9;
/** Dimensions are written in inches or millimetres; a part in a thousand is closer than either is made. */
const SAME_SIZE = 1e-3;

/**
 * The conditions in which two runs differ. Depressions that were held are alike within the band that both were held in,
 * the quoted ones and the densities of the reference air exactly, sizes to one part in a thousand; a condition that only
 * one of the two states is one in which they differ, but for the stub of an intake, where none is what nobody mentions.
 */
export function mismatches(own: Setup, theirs: Setup): readonly Mismatch[] {
  const found: Mismatch[] = [];
  const note = (what: Condition, isAlike: boolean, words: (setup: Setup) => string) => {
    if (!isAlike) found.push({ what, own: words(own), theirs: words(theirs) });
  };
  const pair = [own, theirs] as const;
  note("side", isSame(pair.map(({ port }) => port?.side)), ({ port }) => port?.side ?? NOT_STATED);
  note("direction", own.direction.value === theirs.direction.value, ({ direction }) => direction.value);
  note("target", isHeldAlike(own, theirs), ({ target }) => words(target.value));
  note("quote", isClose(own.quote.value.value, theirs.quote.value.value, ROUNDING), ({ quote }) =>
    words(quote.value),
  );
  note("reference", isClose(resultDensity(own), resultDensity(theirs), ROUNDING), airWords);
  note("adapter", isSized(pair.map(({ adapter }) => adapter?.value)), ({ adapter }) =>
    adapter === undefined ? NOT_STATED : words(adapter.value),
  );
  note("entry", isSame(pair.map(({ entry }) => entry?.value)), ({ entry }) => entry?.value ?? NOT_STATED);
  note("stub", isStubbedAlike(own, theirs), stubWords);
  note("valve", isValveAlike(own.port, theirs.port), ({ port }) => valveWords(port));
  return found;
}

/** Whether nothing stands between two runs. */
export function isReadAlike(own: Setup, theirs: Setup): boolean {
  return mismatches(own, theirs).length === 0;
}

function isSame([own, theirs]: readonly (string | undefined)[]): boolean {
  return own === theirs;
}

function isClose(own: number, theirs: number, share: number): boolean {
  return Math.abs(own - theirs) <= share * Math.max(Math.abs(own), Math.abs(theirs));
}

function isSized([own, theirs]: readonly (Quantity | undefined)[]): boolean {
  if (own === undefined || theirs === undefined) return own === theirs;
  return isClose(own.value, theirs.value, SAME_SIZE);
}

function isHeldAlike(own: Setup, theirs: Setup): boolean {
  const apart = Math.abs(own.target.value.value - theirs.target.value.value);
  return apart <= Math.min(own.within.value, theirs.within.value);
}

function resultDensity({ reference, air }: Setup): number {
  return (reference?.value.state ?? air.value).density;
}

function airWords({ reference, air }: Setup): string {
  return reference?.value.name ?? `the air of the day, ${air.value.density.toFixed(4)} kg/m3`;
}

function isStubbedAlike(own: Setup, theirs: Setup): boolean {
  const [a, b] = [own, theirs].map(({ stub, port }) =>
    stub === undefined && port?.side === "intake" ? "none" : stub?.value,
  );
  if (a === undefined || b === undefined || a === "none" || b === "none") return a === b;
  return isSized([a.bore, b.bore]) && isSized([a.length, b.length]);
}

function stubWords({ stub }: Setup): string {
  if (stub === undefined) return NOT_STATED;
  if (stub.value === "none") return "none";
  const { bore, length } = stub.value;
  return length === undefined ? words(bore) : `${words(bore)} length ${words(length)}`;
}

function isValveAlike(own: Port | undefined, theirs: Port | undefined): boolean {
  return isSized([own?.valve, theirs?.valve]) && (own?.valves ?? 1) === (theirs?.valves ?? 1);
}

function valveWords(port: Port | undefined): string {
  if (port?.valve === undefined) return NOT_STATED;
  const count = port.valves ?? 1;
  return count === 1 ? words(port.valve) : `${count} of ${words(port.valve)}`;
}

function words({ text, unit }: Quantity): string {
  return `${text} ${unit.symbol}`;
}
