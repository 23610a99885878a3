// Records for the tests of calculations and tables: one whole session, and small ones put together from lines.

const SHOP = `headnote 1

bench north "six-motor bench by the north wall"
  shows      flow
  repeat     0.35 %
  settle     1.6 s
  within     0.2 inH2O

engine a114-engine
  bore       4.030 in
  stroke     3.480 in
  cylinders  8

head a114 "iron two-valve head, casting 114"
  engine     a114-engine

port a114-intake
  of         a114
  side       intake
  valve      2.020 in
  seat       45 deg width 0.060 in
  throat     1.780 in
  stem       11/32 in
  section    pinch 2.05 in2

session 2026-11-20T09:30+01:00 "intake 3, as cast and after the short-side cut"
  bench      north
  target     28 inH2O
  air        71.5 degF 29.18 inHg 42 %RH
  leak       1.8 cfm at 28 inH2O
  adapter    4.030 in
  entry      radiused
`;

/** A run whose flow falls back after 0.400 in. */
export const AS_CAST = `${SHOP}
run i3-as-cast
  port       a114-intake
  cylinder   3
  stage      "as cast"

  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
  0.100     28.0                58.4      1.4
  0.200     28.0               125.6      1.5
  0.300     27.9               187.4      1.5
  0.400     28.0               229.8      1.6
  0.500     28.0               226.1      2.3   "heard it tear"
  0.600     28.0               224.9      2.2
`;

/** A run with a void row. */
export const SHORT_SIDE = `${SHOP}
run i3-short-side
  port       a114-intake
  cylinder   3
  stage      "short side laid back 0.040"

  lift[in]  depression[inH2O]  flow[cfm]  settle[s]
  0.100     28.0                58.9      1.4
  0.200     28.0               127.4      1.5
  0.300     27.2               190.6      -     void "belt slipped"
  0.300     28.0               192.3      1.5
`;

/** The parts of a small record; each is a block's lines, and the columns have a usual default. */
export interface Parts {
  readonly bench?: readonly string[];
  readonly port?: readonly string[];
  readonly session?: readonly string[];
  readonly run?: readonly string[];
  readonly columns?: string;
  readonly rows?: readonly string[];
  /** Further blocks, written out. */
  readonly more?: string;
}

/** A record of one run `r` on a bench `b`, which shows flow unless its lines say otherwise, and a port `p`. */
export function smallRecord({ bench, port, session, run, columns, rows, more }: Parts): string {
  return [
    "headnote 1",
    "bench b",
    ...(bench ?? ["shows flow", "repeat 0.5 %"]),
    "port p",
    ...(port ?? ["side intake", "valve 2.000 in"]),
    "session 2026-11-20",
    "bench b",
    "port p",
    ...(session ?? ["leak none", "target 28 inH2O"]),
    "run r",
    ...(run ?? []),
    columns ?? "lift[in] depression[inH2O] flow[cfm]",
    ...(rows ?? []),
    more ?? "",
  ].join("\n");
}
