// Picks the trace or ladder of a record that `--trace` or `--ladder` asks for by its lift.
import type { LadderResult } from "../../shared/model/ladder-result.ts";
import type { TraceResult } from "../../shared/model/trace-result.ts";
import type { Quantity } from "../../shared/quantity/quantity.ts";
import { titleOf } from "../../shared/render/table-blocks.ts";
import type { Io } from "./io.ts";
import type { OpenRecord } from "./open-record.ts";
import { type Call, complain, listOption, textOption } from "./subcommand.ts";

export interface PickedBlock {
  readonly block: TraceResult | LadderResult;
  /** As its heading writes it. */
  readonly title: string;
}

/**
 * `undefined` where the call asks for neither. Of several at one lift `--run` tells which; where it does not, or there is
 * none, the sentence on stderr says what the record has.
 */
export function pickBlock(
  { analysis, shown }: OpenRecord,
  call: Call,
  io: Io,
): PickedBlock | "not found" | undefined {
  const kind = (["trace", "ladder"] as const).find((name) => call.options[name] !== undefined);
  if (kind === undefined) return undefined;
  const wanted = textOption(call, kind);
  const blocks: readonly (TraceResult | LadderResult)[] = analysis[`${kind}s`].map(({ result }) => result);
  const all = blocks.map((block): PickedBlock & { readonly lift: Quantity | undefined } => {
    const lift = "trace" in block ? block.trace.lift : block.ladder.lift;
    return { block, lift, title: titleOf(kind, lift, block.setup.run.id) };
  });
  const runs = listOption(call, "run");
  const found = all.filter(
    ({ block, lift }) =>
      (wanted === undefined || isLift(lift, wanted)) &&
      (runs.length === 0 || runs.includes(block.setup.run.id)),
  );
  const [first, second] = found;
  if (first === undefined) {
    const has = all.length === 0 ? `it has no ${kind}` : `it has ${all.map(({ title }) => title).join(", ")}`;
    complain(io, `${shown}: ${wanted === undefined ? "" : `there is no ${kind} of ${wanted} in it; `}${has}`);
    return "not found";
  }
  if (second !== undefined) {
    const which = wanted === undefined ? "its lift, or with --run" : "--run";
    complain(io, `${shown}: ${found.map(({ title }) => title).join(" and ")}: say which with ${which}`);
    return "not found";
  }
  return first;
}

/** `0.500`, `0.5` and `0.500 in` are one lift. */
function isLift(lift: Quantity | undefined, wanted: string): boolean {
  if (lift === undefined) return false;
  const text = wanted.trim().replace(new RegExp(`\\s*${lift.unit.symbol}$`), "");
  return text === lift.text || (text !== "" && Number(text) === Number(lift.text));
}
