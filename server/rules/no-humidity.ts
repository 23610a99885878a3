// Air without humidity.
import { statedSpan } from "./places.ts";
import { rule } from "./rule.ts";

export const noHumidity = rule({
  code: "no-humidity",
  severity: "hint",
  message: () => "the air has no humidity and is taken as dry",
  help: () => "add a relative humidity such as 42 %RH, or a dew-point or wet-bulb temperature",
  what: "The air is stated without humidity, dew point or wet bulb.",
  why: "Damp summer air is up to 1 % thinner than dry air, which is 0.5 % of flow in a reference air.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  good: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 0 %RH
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  checkSetup(run, report, input) {
    const air = run.setup.statedAir?.value;
    if (air === undefined) return;
    if (air.humidity === undefined && air.dewPoint === undefined && air.wetBulb === undefined) {
      report(statedSpan(input, run, "air"), {});
    }
  },
});
