// A run that ends before the cam has opened the valve as far as it will.
import { meanOverEvent } from "../../shared/calc/cam-event.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import { liftText } from "../../shared/render/station-words.ts";
import { INTAKE_SESSION } from "./examples.ts";
import { rowSpan } from "./places.ts";
import { rule } from "./rule.ts";

/** An engine whose cam lifts the valve to 0.480 in, and its head. */
const ENGINE = `engine e1
  bore       4.030 in
  stroke     3.480 in
  cylinders  8
  cam        c1
cam c1
  side       intake
  law        p345
  lift       0.320 in
  duration   262 deg
  rocker     1.5
head h1
  engine     e1
`;

/** A session on a port of that head. */
const WITH_CAM = INTAKE_SESSION.replace("bench north\n", `${ENGINE}bench north\n`).replace(
  "port p1\n",
  "port p1\n  of         h1\n",
);

export const shortOfCam = rule<{ last: string; cam: string; full: string }>({
  code: "short-of-cam",
  severity: "hint",
  message: ({ last, cam, full }) =>
    `the readings end at ${last}; cam ${cam} lifts the valve to ${full}, so its event has no mean`,
  help: ({ full }) => `read the port up to ${full}`,
  what: "The highest lift that a run has read stays below the lift that the engine's cam gives the valve.",
  why: "What the port does at full lift, a fall-back above all, is then not known, and no mean over the cam's event can stand for the engine.",
  bad: `${WITH_CAM}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.200               28.0      108.0
     0.400               28.0      196.0
`,
  good: `${WITH_CAM}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.200               28.0      108.0
     0.400               28.0      196.0
     0.500               28.0      214.0
`,
  checkRun(result, report) {
    if (result.setup.cam === undefined) return;
    const event = meanOverEvent(result.setup, result.rising);
    const row = result.rising.at(-1)?.rows.at(-1)?.row;
    if (event === undefined || !("missing" in event) || event.missing !== "short-of-cam" || row === undefined)
      return;
    const { lift } = displayUnits(result.setup);
    const words = (value: number) => `${liftText(value, lift)} ${lift.symbol}`;
    report(rowSpan(row), {
      last: words(event.last),
      cam: result.setup.cam.id,
      full: words(event.cam),
    });
  },
});
