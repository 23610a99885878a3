// The lines of a bench block that its own records speak for, each with its reason.
import type { SettleTimes } from "./settle-classes.ts";
import type { TargetHolding } from "./target-holding.ts";
import type { WithinCell } from "./within-cell.ts";

/** Repeats, timed readings and held depressions below these say too little (common practice, no published source). */
export const LEAST_DEGREES = 4;
export const LEAST_TIMED = 5;
export const LEAST_HELD = 10;
/** An approach is quick up to this many usual settle times (common practice, no published source). */
const QUICK_OVER_USUAL = 1.5;

/** `value` is relative, s or Pa; missing where the records say too little, of which `count` is what there is. */
export interface SuggestedLine {
  readonly keyword: "repeat" | "settle" | "quick" | "within";
  readonly value?: number;
  readonly reason: Reason;
}

/** What a suggestion rests on, for whoever says it in words. */
export type Reason =
  | { readonly kind: "too-few"; readonly have: number; readonly need: number }
  | { readonly kind: "pooled"; readonly found: WithinCell }
  | { readonly kind: "median"; readonly count: number }
  | { readonly kind: "usual"; readonly usual: number }
  | { readonly kind: "quickest"; readonly usual: number; readonly bench: string; readonly quickest: number }
  | { readonly kind: "held"; readonly holding: TargetHolding; readonly cost: number };

/** The usual settle time of the quickest bench of all the records. */
export interface QuickestBench {
  readonly bench: string;
  readonly usual: number;
}

export interface Evidence {
  readonly within: WithinCell | undefined;
  readonly settle: SettleTimes | undefined;
  readonly holding: TargetHolding | undefined;
  readonly quickest: QuickestBench | undefined;
}

/**
 * `repeat`: the pooled deviation. `settle`: the median. `quick`: 1.5 times the usual settle time of the quickest bench in
 * the records: what eases a port up more slowly may carry it over an edge that another bench shows. `within`: what 95 % of the
 * depressions hold, at least one written digit.
 */
export function suggestedLines({ within, settle, holding, quickest }: Evidence): readonly SuggestedLine[] {
  return [repeatLine(within), ...settleLines(settle, quickest), withinLine(holding)];
}

function repeatLine(found: WithinCell | undefined): SuggestedLine {
  const degrees = found?.degreesOfFreedom ?? 0;
  if (found === undefined || degrees < LEAST_DEGREES || !(found.deviation > 0)) {
    return { keyword: "repeat", reason: { kind: "too-few", have: degrees, need: LEAST_DEGREES } };
  }
  return { keyword: "repeat", value: found.deviation, reason: { kind: "pooled", found } };
}

function settleLines(
  settle: SettleTimes | undefined,
  quickest: QuickestBench | undefined,
): readonly SuggestedLine[] {
  if (settle === undefined || settle.count < LEAST_TIMED) {
    const reason: Reason = { kind: "too-few", have: settle?.count ?? 0, need: LEAST_TIMED };
    return [
      { keyword: "settle", reason },
      { keyword: "quick", reason },
    ];
  }
  const usual = settle.median;
  const isQuickest = quickest === undefined || usual <= quickest.usual;
  return [
    { keyword: "settle", value: usual, reason: { kind: "median", count: settle.count } },
    {
      keyword: "quick",
      value: QUICK_OVER_USUAL * (isQuickest ? usual : quickest.usual),
      reason: isQuickest
        ? { kind: "usual", usual }
        : { kind: "quickest", usual, bench: quickest.bench, quickest: quickest.usual },
    },
  ];
}

function withinLine(holding: TargetHolding | undefined): SuggestedLine {
  if (holding === undefined || holding.readings < LEAST_HELD || !(holding.target > 0)) {
    const have = holding?.readings ?? 0;
    return { keyword: "within", reason: { kind: "too-few", have, need: LEAST_HELD } };
  }
  const value = Math.max(holding.off, holding.step);
  const cost = 1 - Math.sqrt(1 - Math.min(1, value / holding.target));
  if (!(value > 0)) {
    return { keyword: "within", reason: { kind: "too-few", have: 0, need: LEAST_HELD } };
  }
  return { keyword: "within", value, reason: { kind: "held", holding, cost } };
}
