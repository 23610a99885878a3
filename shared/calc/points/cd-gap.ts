// Discharge coefficient on the narrowest place of the geometry, which no flow can exceed.
import { dischargeCoefficient } from "./discharge-coefficient.ts";

export const cdGap = dischargeCoefficient("gap", {
  doc: "Effective area over the least geometric area on the way through seat and throat; needs seat width and stem.",
  source: "A_eff over the area of Heywood (1988), equations 6.7 to 6.9",
});
