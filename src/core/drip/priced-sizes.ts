import { ratingOf } from "../hydraulics/pipe-rating.ts";
import { type PipeSize, pipeSizes } from "../hydraulics/pipe-sizes.ts";
import type { MaterialSettings } from "../project/project.ts";
import type { PipeFamily } from "../project/water-settings.ts";
import type { PricedSize } from "./watering-job.ts";

/** Solid plastic, kg/m3: PVC 1400, polyethylene 950. From memory; only their products with the same family's walls are compared. */
const densities = { pvc: 1400, pe: 950 } as const;

/**
 * The sizes of a family, the narrowest first, with what a metre counts when sizes are chosen: the cheapest package of the price list where every size of
 * the family has a price, else the mass of its wall, kg/m.
 */
export function pricedSizes(family: PipeFamily, { prices }: Pick<MaterialSettings, "prices">): readonly PricedSize[] {
  const sizes = pipeSizes.filter(({ size }) => size.startsWith(`${family}-`)).sort((a, b) => a.inside_mm - b.inside_mm);
  const costs_pm = sizes.map((size) => price_pm(size, prices));
  const isPriced = costs_pm.every((cost) => cost !== null);
  return sizes.map(({ name, ...size }, i) => ({
    ...size,
    cost_pm: (isPriced ? costs_pm[i] : null) ?? wall_kgpm({ name, ...size }),
    rating_kpa: ratingOf(size.size) ?? 0,
  }));
}

/** Price of a metre out of the package that is cheapest by it; null: not priced. */
function price_pm({ size, stick_m }: PipeSize, prices: MaterialSettings["prices"]): number | null {
  const each = prices.flatMap((entry) =>
    entry.article === `main-pipe-${size}` && entry.price !== null ? [entry.price / (entry.size * stick_m)] : [],
  );
  return each.length === 0 ? null : Math.min(...each);
}

function wall_kgpm({ size, outside_mm, inside_mm }: PipeSize): number {
  const wall_m2 = (Math.PI / 4) * 1e-6 * (outside_mm ** 2 - inside_mm ** 2);
  return wall_m2 * densities[size.startsWith("pe") ? "pe" : "pvc"];
}
