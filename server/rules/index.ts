// The list of rules: a new one is its own file and one line here.
import { adapterOffBore } from "./adapter-off-bore.ts";
import { altimeterAsStation } from "./altimeter-as-station.ts";
import { benchNeeds } from "./bench-needs.ts";
import { correctedTwice } from "./corrected-twice.ts";
import { cylindersApart } from "./cylinders-apart.ts";
import { directionDependent } from "./direction-dependent.ts";
import { drift } from "./drift.ts";
import { duplicateId } from "./duplicate-id.ts";
import { expectationMissed } from "./expectation-missed.ts";
import { fallBack } from "./fall-back.ts";
import { fallBackNotResolved } from "./fall-back-not-resolved.ts";
import { flatTop } from "./flat-top.ts";
import { gainWithinNoise } from "./gain-within-noise.ts";
import { hiddenFallBack } from "./hidden-fall-back.ts";
import { implausibleCd } from "./implausible-cd.ts";
import { impossible } from "./impossible.ts";
import { includeCycle } from "./include-cycle.ts";
import { includeOutside } from "./include-outside.ts";
import { ladderExponent } from "./ladder-exponent.ts";
import { largeLeak } from "./large-leak.ts";
import { letGo } from "./let-go.ts";
import { liftsNotShared } from "./lifts-not-shared.ts";
import { missingInclude } from "./missing-include.ts";
import { nameNotFound } from "./name-not-found.ts";
import { noAir } from "./no-air.ts";
import { noBench } from "./no-bench.ts";
import { noEntry } from "./no-entry.ts";
import { noGeometry } from "./no-geometry.ts";
import { noHumidity } from "./no-humidity.ts";
import { noLeak } from "./no-leak.ts";
import { noRepeat } from "./no-repeat.ts";
import { noResult } from "./no-result.ts";
import { noTarget } from "./no-target.ts";
import { notComparable } from "./not-comparable.ts";
import { notSettled } from "./not-settled.ts";
import { offRange } from "./off-range.ts";
import { offTarget } from "./off-target.ts";
import { outsideCalibration } from "./outside-calibration.ts";
import { outsideRange } from "./outside-range.ts";
import { plateOff } from "./plate-off.ts";
import { plateOverdue } from "./plate-overdue.ts";
import { reAttached } from "./re-attached.ts";
import { readEarly } from "./read-early.ts";
import { readingColumn } from "./reading-column.ts";
import { repeatsDisagree } from "./repeats-disagree.ts";
import type { Rule } from "./rule.ts";
import { samplesLeftOut } from "./samples-left-out.ts";
import { scaledTooFar } from "./scaled-too-far.ts";
import { shortOfCam } from "./short-of-cam.ts";
import { traceGap } from "./trace-gap.ts";
import { traceUnusable } from "./trace-unusable.ts";
import { unitSlip } from "./unit-slip.ts";

/** Those that speak of the port, in the order in which they are told. */
const PORT_RULES: readonly Rule[] = [
  fallBack,
  fallBackNotResolved,
  flatTop,
  hiddenFallBack,
  directionDependent,
  cylindersApart,
];

/** Codes of what is found in the port rather than in its readings. */
export const PORT_CODES: readonly string[] = PORT_RULES.map(({ code }) => code);

export const RULES: readonly Rule[] = [
  // names and includes
  duplicateId,
  nameNotFound,
  missingInclude,
  includeCycle,
  includeOutside,
  // the set-up
  benchNeeds,
  readingColumn,
  noBench,
  noResult,
  noTarget,
  noAir,
  noHumidity,
  noLeak,
  noRepeat,
  noEntry,
  altimeterAsStation,
  adapterOffBore,
  largeLeak,
  outsideRange,
  offRange,
  outsideCalibration,
  scaledTooFar,
  correctedTwice,
  plateOff,
  plateOverdue,
  // the point
  offTarget,
  readEarly,
  repeatsDisagree,
  drift,
  impossible,
  implausibleCd,
  unitSlip,
  noGeometry,
  // the port
  ...PORT_RULES,
  shortOfCam,
  expectationMissed,
  // traces and ladders
  traceUnusable,
  samplesLeftOut,
  traceGap,
  notSettled,
  letGo,
  reAttached,
  ladderExponent,
  // the comparison
  notComparable,
  gainWithinNoise,
  liftsNotShared,
];
