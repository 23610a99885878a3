// A weather service's barometer written as station pressure.
import { standardPressure } from "../../shared/calc/station-pressure.ts";
import { statedSpan } from "./places.ts";
import { rule } from "./rule.ts";
import { inUnit, written } from "./words.ts";

export const altimeterAsStation = rule<{ pressure: string; over: string; elevation: string; limit: string }>({
  code: "altimeter-as-station",
  severity: "warning",
  message: ({ pressure, over, elevation, limit }) =>
    `${pressure} stands ${over} above the standard atmosphere at ${elevation} (limit ${limit}), so it is most likely reduced to sea level`,
  help: () => "write it behind the word altimeter, or read a barometer in the shop",
  what: "The stated pressure is higher than weather makes it at the stated elevation.",
  why: "A sea-level barometer taken for the pressure in the shop is wrong by 10 % in flow at 5000 ft.",
  bad: `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 30.02 inHg 40 %RH elevation 5000 ft
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
  air        20 degC 40 %RH altimeter 30.02 inHg elevation 5000 ft
  leak       none
run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.100               28.0       60.0
`,
  checkSetup(run, report, input) {
    const { pressure, elevation } = run.setup.statedAir?.value ?? {};
    if (pressure === undefined || elevation === undefined) return;
    const standard = standardPressure(elevation.value);
    if (standard === undefined || pressure.value - standard <= input.limits.barometer) return;
    report(statedSpan(input, run, "air"), {
      pressure: written(pressure),
      over: inUnit(pressure.value - standard, pressure.unit),
      elevation: written(elevation),
      limit: inUnit(input.limits.barometer, pressure.unit),
    });
  },
});
