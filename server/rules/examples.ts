// What the example records of several rules begin with; a run follows.

/** A session on an intake port. */
export const INTAKE_SESSION = `headnote 1
bench north
  shows      flow
  repeat     0.4 %
port p1
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
`;

/** A session without a port. */
export const BARE_SESSION = `headnote 1
bench north
  shows      flow
  repeat     0.4 %
session 2026-03-02
  bench      north
  target     28 inH2O
  air        20 degC 1000 hPa 40 %RH
  leak       none
`;

/** A run of one lift and a trace of it; from 1.3 s on flow and area stand this share lower, or higher where it is negative. */
export function tracedRun(drop: number, rows = TWO_SECONDS): string {
  return `${BARE_SESSION}run r1
  lift[in]  depression[inH2O]  flow[cfm]
     0.500               28.0      195.2
trace 0.500 in of r1
  time[s]  depression[inH2O]  flow[cfm]
${rows.map((tenths) => traceRow(tenths, drop)).join("")}`;
}

const TWO_SECONDS: readonly number[] = Array.from({ length: 22 }, (_, tenths) => tenths);

/** A bench that comes up to 28 inH2O with a time constant of 0.3 s. */
function traceRow(tenths: number, drop: number): string {
  const time = tenths / 10;
  const depression = 28 * -Math.expm1(-time / 0.3);
  const flow = 36.9 * Math.sqrt(depression) * (time > 1.25 ? 1 - drop : 1);
  const cells = [
    time.toFixed(2).padStart(9),
    depression.toFixed(1).padStart(19),
    flow.toFixed(1).padStart(11),
  ];
  return `${cells.join("")}\n`;
}
