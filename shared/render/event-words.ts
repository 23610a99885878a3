// The mean over the cam event as a sentence, or what stands in its way.
import type { EventMean } from "../model/result.ts";
import type { Unit } from "../quantity/unit.ts";
import { percent } from "./shown-percent.ts";
import { liftText } from "./station-words.ts";

/** A share that would read "0.00 %" is not said. */
const LEAST_SAID = 5e-5;

/** `flow` says a flow with its unit; `cam` is the cam's name in the record. */
export function eventWords(
  event: EventMean,
  cam: string,
  lift: Unit,
  flow: (value: number) => string,
): string {
  const at = (value: number) => `${liftText(value, lift)} ${lift.symbol}`;
  if ("missing" in event) return `no mean over the cam event: ${missingWords(event, cam, at)}`;
  const below =
    event.below >= LEAST_SAID
      ? ` (${percent(event.below)} of it below ${at(event.first)}, on a straight line from nothing at lift 0)`
      : "";
  return `mean over the cam event ${flow(event.flow)}${below}`;
}

function missingWords(
  event: Extract<EventMean, { missing: string }>,
  cam: string,
  at: (lift: number) => string,
): string {
  switch (event.missing) {
    case "no-event":
      return `${cam} has no lifts by rising angle that open the valve`;
    case "one-station":
      return "fewer than two lifts were read";
    case "short-of-cam":
      return `${cam} lifts the valve to ${at(event.cam)}, the last reading is at ${at(event.last)}`;
    case "begins-too-high":
      return `the first reading is at ${at(event.first)}; from lift 0 flow goes with lift only up to ${at(event.limit)}`;
  }
}
