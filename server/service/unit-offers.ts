// The units that a preview can show a run's results in.
import { OFFERED_UNITS, type PreviewView } from "../../shared/messages/preview.ts";
import type { Setup } from "../../shared/model/setup.ts";
import { displayUnits } from "../../shared/render/display-units.ts";
import type { WantedUnits } from "../../shared/render/wanted-units.ts";

const NAMES = ["lift", "flow", "depression"] as const;

export function unitOffers(setup: Setup, wanted: WantedUnits): PreviewView["units"] {
  const own = displayUnits(setup);
  const shown = displayUnits(setup, wanted);
  return NAMES.map((name) => ({
    name,
    own: own[name].symbol,
    shown: shown[name].symbol,
    offers: [...OFFERED_UNITS[name]],
  }));
}
