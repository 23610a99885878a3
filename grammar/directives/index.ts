// The list of directives: a new one is its own file and one line here.
import type { BlockKind } from "../../shared/model/model.ts";
import type { Form, Heading, Property } from "../directive.ts";
import { adapter } from "./adapter.ts";
import { air } from "./air.ts";
import { baseline } from "./baseline.ts";
import { bench } from "./bench.ts";
import { bore } from "./bore.ts";
import { cam } from "./cam.ts";
import { casting } from "./casting.ts";
import { centre } from "./centre.ts";
import { cylinder } from "./cylinder.ts";
import { cylinders } from "./cylinders.ts";
import { date } from "./date.ts";
import { depression } from "./depression.ts";
import { diameter } from "./diameter.ts";
import { direction } from "./direction.ts";
import { due } from "./due.ts";
import { duration } from "./duration.ts";
import { efficiency } from "./efficiency.ts";
import { element } from "./element.ts";
import { engine } from "./engine.ts";
import { entry } from "./entry.ts";
import { expect } from "./expect.ts";
import { flow } from "./flow.ts";
import { head } from "./head.ts";
import { ladder } from "./ladder.ts";
import { lash } from "./lash.ts";
import { law } from "./law.ts";
import { leak } from "./leak.ts";
import { length } from "./length.ts";
import { lift } from "./lift.ts";
import { liftSetting } from "./lift-setting.ts";
import { log } from "./log.ts";
import { map } from "./map.ts";
import { meter } from "./meter.ts";
import { motors } from "./motors.ts";
import { note } from "./note.ts";
import { of } from "./of.ts";
import { operator } from "./operator.ts";
import { plate } from "./plate.ts";
import { plateCheck } from "./plate-check.ts";
import { port } from "./port.ts";
import { quick } from "./quick.ts";
import { quote } from "./quote.ts";
import { range } from "./range.ts";
import { reference } from "./reference.ts";
import { repeat } from "./repeat.ts";
import { rocker } from "./rocker.ts";
import { run } from "./run.ts";
import { seat } from "./seat.ts";
import { section } from "./section.ts";
import { session } from "./session.ts";
import { settle } from "./settle.ts";
import { shows } from "./shows.ts";
import { side } from "./side.ts";
import { speed } from "./speed.ts";
import { stage } from "./stage.ts";
import { stations } from "./stations.ts";
import { stem } from "./stem.ts";
import { stroke } from "./stroke.ts";
import { stub } from "./stub.ts";
import { swirlMeter } from "./swirl-meter.ts";
import { target } from "./target.ts";
import { throat } from "./throat.ts";
import { trace } from "./trace.ts";
import { uncertainty } from "./uncertainty.ts";
import { valve } from "./valve.ts";
import { valves } from "./valves.ts";
import { volume } from "./volume.ts";
import { within } from "./within.ts";

export const FORMS: readonly Form[] = [
  // headings, in the order in which the reference shows them
  bench,
  plate,
  engine,
  head,
  port,
  cam,
  session,
  run,
  trace,
  ladder,
  map,
  plateCheck,
  // properties
  adapter,
  air,
  baseline,
  bore,
  casting,
  centre,
  cylinder,
  cylinders,
  date,
  depression,
  diameter,
  direction,
  due,
  duration,
  efficiency,
  element,
  entry,
  expect,
  flow,
  lash,
  law,
  leak,
  length,
  lift,
  liftSetting,
  log,
  meter,
  motors,
  note,
  of,
  operator,
  quick,
  quote,
  range,
  reference,
  repeat,
  rocker,
  seat,
  section,
  settle,
  shows,
  side,
  speed,
  stage,
  stations,
  stem,
  stroke,
  stub,
  swirlMeter,
  target,
  throat,
  uncertainty,
  valve,
  valves,
  volume,
  within,
].flat();

const headings = new Map<string, Heading>();
const properties = new Map<BlockKind, Map<string, Property>>();
for (const form of FORMS) {
  if (form.form === "heading") headings.set(form.keyword, form);
  else
    for (const block of form.within) {
      const known = properties.get(block) ?? new Map<string, Property>();
      properties.set(block, known.set(form.keyword, form));
    }
}

/** The heading of that keyword. */
export function findHeading(keyword: string): Heading | undefined {
  return headings.get(keyword);
}

/** The property of that keyword in a block. */
export function findProperty(block: BlockKind, keyword: string): Property | undefined {
  return properties.get(block)?.get(keyword);
}

/** Keywords of the properties that a block may have, in the order of the list. */
export function propertyKeywords(block: BlockKind): readonly string[] {
  return [...(properties.get(block)?.keys() ?? [])];
}

export const headingKeywords: readonly string[] = [...headings.keys()];

const known: ReadonlySet<string> = new Set(FORMS.map((form) => form.keyword));

/** Every keyword once. */
export const keywords: readonly string[] = [...known];

/** Whether a word is a keyword of some block. */
export function isKeyword(word: string): boolean {
  return known.has(word);
}
