// Draws a picture of Vega-Lite without making code from texts: the page's policy forbids that.

import { transforms } from "vega-dataflow";
import * as encode from "vega-encode";
import { expressionInterpreter } from "vega-interpreter";
import { compile, type TopLevelSpec } from "vega-lite";
import { parse } from "vega-parser";
import * as basic from "vega-transforms";
import { None } from "vega-util";
import { View } from "vega-view";
import * as bound from "vega-view-transforms";

/** Maps, clouds of words and the like stay out of the page. */
Object.assign(transforms, basic, bound, encode);

export type Spec = Readonly<Record<string, unknown>>;

const QUIET = { warn: nothing, info: nothing, debug: nothing, error: nothing, level: nothing };

/** A view of the picture, in `container` or nowhere. Throws for what is no valid specification. */
export function viewOf(spec: Spec, container?: Element): View {
  const { spec: parts } = compile(spec as unknown as TopLevelSpec, { logger: QUIET as never });
  return new View(parse(parts, null, { ast: true }), {
    expr: expressionInterpreter,
    renderer: container === undefined ? "none" : "svg",
    ...(container !== undefined && { container }),
    hover: false,
    logLevel: None,
  });
}

function nothing(): typeof QUIET {
  return QUIET;
}
