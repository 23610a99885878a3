// The areas a discharge coefficient is taken on: curtain, gap, throat and head of one poppet valve.

/**
 * One poppet valve on its seat, lengths in m: diameter of the `head` (outer edge of the seat), `seatAngle` in
 * rad from the plane across the stem, seat width projected on that plane (face width times the cosine of the
 * angle), diameters of `throat` and `stem`.
 */
export interface ValveGeometry {
  readonly head: number;
  readonly seatAngle: number;
  readonly seatWidthProjected: number;
  readonly throat: number;
  readonly stem: number;
}

/** Area in m2 of the cylinder between seat and valve head: pi D L (Heywood 1988, equation 6.10). */
export function curtainArea(head: number, lift: number): number {
  return Math.PI * head * lift;
}

/** Area of the valve head in m2: pi/4 D^2 (C. F. Taylor, The Internal-Combustion Engine, vol. 1, chapter 6). */
export function headArea(head: number): number {
  return (Math.PI / 4) * head ** 2;
}

/**
 * Area in m2 of the throat less its stem: pi/4 (Dp^2 - Ds^2) (Heywood 1988, equation 6.9). `undefined` unless
 * the throat is wider than the stem.
 */
export function throatArea(throat: number, stem: number): number | undefined {
  return stem >= 0 && throat > stem ? (Math.PI / 4) * (throat ** 2 - stem ** 2) : undefined;
}

function isPossible(valve: ValveGeometry): boolean {
  const { head, seatAngle, seatWidthProjected, throat } = valve;
  return (
    throat < head &&
    seatAngle >= 0 &&
    seatAngle < Math.PI / 2 &&
    seatWidthProjected >= 0 &&
    2 * seatWidthProjected < head
  );
}

/** Lift at which the shortest way leaves the outer edge of the seat; infinite on a flat seat that has a width. */
function endOfConicalStage(valve: ValveGeometry): number {
  const { seatAngle, seatWidthProjected } = valve;
  if (seatWidthProjected === 0) return 0;
  return seatWidthProjected / (Math.sin(seatAngle) * Math.cos(seatAngle));
}

/** Least area between valve and seat alone, by lift: Heywood (1988), equations 6.7 and 6.8. */
function seatPassage(valve: ValveGeometry): (lift: number) => number {
  const { head, seatAngle, seatWidthProjected: width } = valve;
  const endOfCone = endOfConicalStage(valve);
  const [cosine, tangent, sineOfTwice] = [Math.cos(seatAngle), Math.tan(seatAngle), Math.sin(2 * seatAngle)];
  return (lift) => {
    if (lift <= endOfCone) {
      const meanDiameter = head - 2 * width + (lift / 2) * sineOfTwice;
      return Math.PI * lift * cosine * meanDiameter;
    }
    return Math.PI * (head - width) * Math.sqrt((lift - width * tangent) ** 2 + width ** 2);
  };
}

/**
 * Gap area in m2 by lift in m: the least geometric area on the way through seat and throat. It rises with
 * lift without a step, first as a cone across the seat, then as one to its outer edge, until the throat less its
 * stem is the narrowest place.
 *
 * `undefined` for a lift below zero and for dimensions no valve can have: a throat as wide as the head or
 * narrower than the stem, an angle outside 0 to 90 deg, a seat wider than the head's radius.
 *
 * Source: Heywood (1988), equations 6.7 to 6.9. The third stage is taken where the throat's area is reached,
 * which is its equation for the lift wherever that has a real root, and also holds where the throat is so
 * small that it governs before the conical stage ends.
 */
export function gapAreaOf(valve: ValveGeometry): (lift: number) => number | undefined {
  const throat = throatArea(valve.throat, valve.stem);
  if (throat === undefined || !isPossible(valve)) return () => undefined;
  const passage = seatPassage(valve);
  return (lift) => (lift >= 0 ? Math.min(passage(lift), throat) : undefined);
}

/** The gap area at one lift. */
export function gapArea(valve: ValveGeometry, lift: number): number | undefined {
  return gapAreaOf(valve)(lift);
}

/**
 * Lift in m from which the throat less its stem is the narrowest place; more lift adds no gap area.
 * `undefined` for the dimensions `gapAreaOf` refuses.
 * Source: Heywood (1988), the limit of equation 6.8; within the conical stage equation 6.7 solved for the lift.
 */
export function liftWhereGapReachesThroat(valve: ValveGeometry): number | undefined {
  const throat = throatArea(valve.throat, valve.stem);
  if (throat === undefined || !isPossible(valve)) return undefined;
  const { head, seatAngle, seatWidthProjected: width } = valve;
  const endOfCone = endOfConicalStage(valve);
  if (endOfCone < Infinity && seatPassage(valve)(endOfCone) <= throat) {
    const slant = throat / (Math.PI * (head - width));
    return Math.sqrt(slant ** 2 - width ** 2) + width * Math.tan(seatAngle);
  }
  const inner = head - 2 * width;
  const target = throat / (Math.PI * Math.cos(seatAngle));
  // This form of the root of a quadratic stays true on a flat seat, where the quadratic term vanishes.
  return (2 * target) / (inner + Math.sqrt(inner ** 2 + 2 * Math.sin(2 * seatAngle) * target));
}
