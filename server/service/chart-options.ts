// How a preview was asked to draw, in the chart's words.
import type { PreviewParams } from "../../shared/messages/preview.ts";
import type { ChartOptions } from "../../shared/render/chart.ts";
import { unitsNamed } from "../../shared/render/wanted-units.ts";

export function chartOptions({
  axis,
  cd,
  units,
  lifts,
}: Pick<PreviewParams, "axis" | "cd" | "units" | "lifts">): ChartOptions {
  return { xAxis: axis, cd, units: unitsNamed(units), ...(lifts !== null && { lifts }) };
}
