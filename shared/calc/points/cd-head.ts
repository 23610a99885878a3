// The trade's flow coefficient: on the valve head, so that it rises with lift.
import { dischargeCoefficient } from "./discharge-coefficient.ts";

export const cdHead = dischargeCoefficient("head", {
  doc: "Effective area over the disc of the valve head; the flow coefficient that is averaged over a cam event.",
  source: "A_eff/(pi/4 D^2): C. F. Taylor, The Internal-Combustion Engine, vol. 1, chapter 6",
});
