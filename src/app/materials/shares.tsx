import { perVineAndArea } from "../../core/materials/cost.ts";
import type { MaterialCost } from "../../core/materials/material-line.ts";
import type { Rows } from "../../core/rows/rows.ts";
import { inUnit, type UnitSystem } from "../../core/units.ts";
import { FigureList } from "../strip/figure-list.tsx";
import { money } from "./money.ts";

interface SharesProps {
  readonly cost: MaterialCost;
  readonly rows: Rows;
  readonly currency: string | null;
  readonly units: UnitSystem;
}

/** What a vine and an acre or hectare of vines comes to. */
export function Shares({ cost, rows, currency, units }: SharesProps) {
  const { perVine, perArea_m2 } = perVineAndArea(cost, rows);
  const [area, one_m2] = units === "us" ? (["acre", areaOf.acre] as const) : (["hectare", areaOf.hectare] as const);
  return (
    <FigureList
      lines={[
        ...(perVine === null ? [] : [{ name: "A vine", value: money(perVine, currency), account: null }]),
        ...(perArea_m2 === null
          ? []
          : [
              {
                name: `${area === "acre" ? "An" : "A"} ${area} of vines`,
                value: money(perArea_m2 * one_m2, currency),
                account: null,
              },
            ]),
      ]}
    />
  );
}

/** Square metres, by the core's own factors. */
const areaOf = { acre: 1 / inUnit("area", 1, "acre"), hectare: 1 / inUnit("area", 1, "ha") };
