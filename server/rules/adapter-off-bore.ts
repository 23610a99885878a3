// An adapter that is not of the engine's bore.
import { statedSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { percent, written } from "./words.ts";

export const adapterOffBore = rule<{ adapter: string; bore: string; off: string; limit: string }>({
  code: "adapter-off-bore",
  severity: "warning",
  message: ({ adapter, bore, off, limit }) =>
    `the adapter (${adapter}) is ${off} off the engine's bore (${bore}; limit ${limit})`,
  help: () => "fit an adapter of the engine's bore: a wall near the valve shrouds it, a far one does not",
  what: "The adapter's bore differs from the engine's by more than a few percent.",
  why: "The cylinder wall shrouds a valve that stands close to it, so the wrong bore measures another port.",
  bad: "headnote 1\nengine e1\n  bore 4.000 in\nhead h1\n  engine e1\nbench north\n  shows flow\n  repeat 0.4 %\nport p1\n  of h1\n  side intake\n  valve 2.020 in\n  seat 45 deg width 0.060 in\n  throat 1.780 in\n  stem 0.342 in\nsession 2026-03-02\n  bench north\n  port p1\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\n  entry radiused\n  adapter 4.500 in\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 55.0\n",
  good: "headnote 1\nengine e1\n  bore 4.000 in\nhead h1\n  engine e1\nbench north\n  shows flow\n  repeat 0.4 %\nport p1\n  of h1\n  side intake\n  valve 2.020 in\n  seat 45 deg width 0.060 in\n  throat 1.780 in\n  stem 0.342 in\nsession 2026-03-02\n  bench north\n  port p1\n  target 28 inH2O\n  air 20 degC 1000 hPa 40 %RH\n  leak none\n  entry radiused\n  adapter 4.030 in\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 55.0\n",
  check(input, report) {
    for (const run of input.settled) {
      const { adapter, engine } = run.setup;
      if (adapter === undefined || engine?.bore === undefined || engine.bore.value <= 0) continue;
      const off = Math.abs(adapter.value.value / engine.bore.value - 1);
      if (off <= input.limits.adapter * (1 + 1e-9)) continue;
      report(statedSpan(input, run, "adapter"), {
        adapter: written(adapter.value),
        bore: written(engine.bore),
        off: percent(off),
        limit: percent(input.limits.adapter),
      });
    }
  },
});
