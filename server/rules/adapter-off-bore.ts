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
  bad: `headnote 1
engine e1
  bore       4.000 in
head h1
  engine     e1
bench north
  shows      flow
  repeat     0.4 %
port p1
  of         h1
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       0.342 in
session 2026-03-02
  bench      north
  port       p1
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
  entry      radiused
  adapter    4.500 in
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`,
  good: `headnote 1
engine e1
  bore       4.000 in
head h1
  engine     e1
bench north
  shows      flow
  repeat     0.4 %
port p1
  of         h1
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       0.342 in
session 2026-03-02
  bench      north
  port       p1
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
  entry      radiused
  adapter    4.030 in
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       55.0
`,
  checkSetup(run, report, input) {
    const { adapter, engine } = run.setup;
    if (adapter === undefined || engine?.bore === undefined || engine.bore.value <= 0) return;
    const off = Math.abs(adapter.value.value / engine.bore.value - 1);
    if (off <= input.limits.adapter * (1 + 1e-9)) return;
    report(statedSpan(input, run, "adapter"), {
      adapter: written(adapter.value),
      bore: written(engine.bore),
      off: percent(off),
      limit: percent(input.limits.adapter),
    });
  },
});
