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
  bad: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nsession 2026-03-02\n  bench north\n  target 28 inH2O\n  air 20 degC 30.02 inHg 40 %RH elevation 5000 ft\n  leak none\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 60.0\n",
  good: "headnote 1\nbench north\n  shows flow\n  repeat 0.4 %\nsession 2026-03-02\n  bench north\n  target 28 inH2O\n  air 20 degC 40 %RH altimeter 30.02 inHg elevation 5000 ft\n  leak none\nrun r1\n  lift[in] depression[inH2O] flow[cfm]\n  0.100 28.0 60.0\n",
  check(input, report) {
    for (const run of input.settled) {
      const { pressure, elevation } = run.setup.statedAir?.value ?? {};
      if (pressure === undefined || elevation === undefined) continue;
      const standard = standardPressure(elevation.value);
      if (standard === undefined || pressure.value - standard <= input.limits.barometer) continue;
      report(statedSpan(input, run, "air"), {
        pressure: written(pressure),
        over: inUnit(pressure.value - standard, pressure.unit),
        elevation: written(elevation),
        limit: inUnit(input.limits.barometer, pressure.unit),
      });
    }
  },
});
