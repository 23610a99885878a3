// The list of calculations for one reading, in the order in which tables show them.
import { cdCurtain } from "./cd-curtain.ts";
import { cdGap } from "./cd-gap.ts";
import { cdHead } from "./cd-head.ts";
import { cdThroat } from "./cd-throat.ts";
import { correctedFlow } from "./corrected-flow.ts";
import { effectiveArea } from "./effective-area.ts";
import { liftRatio } from "./lift-ratio.ts";
import { massFlow } from "./mass-flow.ts";
import type { PointCalculation } from "./point-calculation.ts";
import { uncertainty } from "./uncertainty.ts";
import { velocity } from "./velocity.ts";

export const POINT_CALCULATIONS: readonly PointCalculation[] = [
  correctedFlow,
  uncertainty,
  massFlow,
  effectiveArea,
  liftRatio,
  cdCurtain,
  cdGap,
  cdThroat,
  cdHead,
  velocity,
];
