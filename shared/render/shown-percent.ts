// Shares as sentences say them.
import { formatFixed } from "../quantity/digits.ts";

/** A share in percent: one decimal, two below one percent. */
export function percent(share: number): string {
  const value = share * 100;
  return `${formatFixed(value, Math.abs(value) < 0.995 ? 2 : 1)} %`;
}

/** The same with its sign, whichever it is. */
export function signed(share: number): string {
  return share < 0 ? percent(share) : `+${percent(share)}`;
}
