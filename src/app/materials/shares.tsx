import { perVineAndArea } from "../../core/materials/cost.ts";
import { pricePerAreaAccount, pricePerVineAccount } from "../../core/materials/cost-accounts.ts";
import type { Materials } from "../../core/materials/materials.ts";
import type { Rows } from "../../core/rows/rows.ts";
import { inUnit, type UnitSystem } from "../../core/units.ts";
import { FigureList } from "../strip/figure-list.tsx";
import { money } from "./money.ts";

interface SharesProps {
  readonly materials: Materials;
  readonly rows: Rows;
  readonly currency: string | null;
  readonly units: UnitSystem;
}

/** What a vine and an acre or hectare of vines comes to. */
export function Shares({ materials, rows, currency, units }: SharesProps) {
  const { perVine, perArea_m2 } = perVineAndArea(materials.cost, rows);
  const [area, one_m2] = units === "us" ? (["acre", areaOf.acre] as const) : (["hectare", areaOf.hectare] as const);
  return (
    <FigureList
      lines={[
        ...(perVine === null
          ? []
          : [
              {
                name: "A vine",
                value: money(perVine, currency),
                account: () => pricePerVineAccount(materials, rows),
              },
            ]),
        ...(perArea_m2 === null
          ? []
          : [
              {
                name: `${area === "acre" ? "An" : "A"} ${area} of vines`,
                value: money(perArea_m2 * one_m2, currency),
                account: () => pricePerAreaAccount(materials, rows, one_m2),
              },
            ]),
      ]}
    />
  );
}

/** Square metres, by the core's own factors. */
const areaOf = { acre: 1 / inUnit("area", 1, "acre"), hectare: 1 / inUnit("area", 1, "ha") };
