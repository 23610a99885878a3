// Discharge coefficient on the curtain, which says how well the valve and seat are used at low lift.
import { dischargeCoefficient } from "./discharge-coefficient.ts";

export const cdCurtain = dischargeCoefficient("curtain", {
  doc: "Effective area over the curtain between valve head and seat; falls as the port takes over from the valve.",
  source: "A_eff/(pi D L): Heywood (1988), equation 6.10",
});
