// What a port passes on average while its engine's cam holds the valve open, or why that cannot be told.
import type { Cam } from "../model/model.ts";
import type { EventMean, Station } from "../model/result.ts";
import type { Setup } from "../model/setup.ts";
import { type EventPoint, eventMean, reaches, sampleEvent, shareBelow } from "./cam-law.ts";
import { columnValues } from "./column-values.ts";
import { liftToFlatten } from "./port-areas.ts";

/**
 * The mean flow over the event of the set-up's cam; `undefined` without one. Between shut and the first station the curve
 * is a straight line, which holds while the curtain under the valve is the smallest area: a curve that begins above that
 * lift (L/D 0.25 where the port does not say enough for it) has no such mean, nor has one that ends below the cam's.
 */
export function meanOverEvent(
  { cam, port }: Setup,
  stations: readonly Pick<Station, "lift" | "flow">[],
): EventMean | undefined {
  if (cam === undefined) return undefined;
  const curve = stations.filter(({ lift }) => lift > 0).map(({ lift, flow }) => ({ lift, value: flow }));
  const first = curve[0]?.lift;
  const last = curve.at(-1)?.lift;
  if (first === undefined || last === undefined || curve.length < 2) return { missing: "one-station" };
  const event = camEvent(cam);
  if (event === undefined) return { missing: "no-event" };
  const highest = event.reduce((most, { lift }) => Math.max(most, lift), 0);
  if (!reaches(last, highest)) return { missing: "short-of-cam", cam: highest, last };
  const limit = port && liftToFlatten(port)?.lift;
  if (limit !== undefined && !reaches(limit, first)) return { missing: "begins-too-high", first, limit };
  const flow = eventMean(event, curve);
  return flow === undefined ? { missing: "no-event" } : { flow, first, below: shareBelow(event, first) };
}

/**
 * Lift at the valve over the cam's event: lobe lift times rocker ratio, less lash. The laws are symmetric, so that only a
 * measured table knows its own angles; `undefined` where the cam states neither.
 */
function camEvent(cam: Cam): readonly EventPoint[] | undefined {
  const atValve = (lobe: number) => lobe * (cam.rocker ?? 1) - (cam.lash?.value ?? 0);
  const table = tableEvent(cam);
  const event = table ?? (cam.law && cam.lift && sampleEvent(cam.law, cam.lift.value));
  return event?.map(({ angle, lift }) => ({ angle, lift: atValve(lift) }));
}

function tableEvent(cam: Cam): readonly EventPoint[] | undefined {
  const angles = columnValues(cam.table, "angle");
  const lifts = columnValues(cam.table, "lift");
  if (cam.table === undefined || angles === undefined || lifts === undefined) return undefined;
  const points = cam.table.rows.flatMap((row) => {
    const angle = angles.value(row);
    const lift = lifts.value(row);
    return row.void !== undefined || angle === undefined || lift === undefined ? [] : [{ angle, lift }];
  });
  return points.length < 2 ? undefined : points;
}
