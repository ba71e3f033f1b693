import type { Watered } from "../../core/drip/watering-stage.ts";
import { supplyChartSheet, supplyChartSvg } from "../../core/sheets/supply-chart-svg.ts";
import { useStore } from "../store-context.ts";
import { ChartPart } from "./chart-part.tsx";

/** What the water gives against what each set takes. */
export function SupplyPart({ watered, name }: { readonly watered: Watered; readonly name: string }) {
  const units = useStore().units.value;
  if (watered.watering?.supply == null) return null;
  return (
    <section aria-label="Water against sets">
      <h3>What the water gives, and the sets take</h3>
      <ChartPart
        title="Water and sets"
        file={`${name} water`}
        draw={(width_px) => supplyChartSheet(watered, { units, width_px })}
        whole={() => supplyChartSvg(watered, name, { units })}
      />
    </section>
  );
}
