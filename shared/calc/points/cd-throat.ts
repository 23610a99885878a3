// Discharge coefficient on the throat, which says how well the port is used at high lift.
import { dischargeCoefficient } from "./discharge-coefficient.ts";

export const cdThroat = dischargeCoefficient("throat", {
  doc: "Effective area over the throat less the stem.",
  source: "A_eff/(pi/4 (Dp^2 - Ds^2)): Heywood (1988), equation 6.9",
});
