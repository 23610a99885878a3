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
