import type { Drip } from "../drip/drip.ts";
import { quantity as inUnits, type Phrase, say } from "../finding.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Block, MaterialSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import type { CutJob } from "./cutting/cut-job.ts";
import type { CutPlan } from "./cutting/cut-plan.ts";
import type { MaterialCost, MaterialLine } from "./material-line.ts";
import { orderOf, packsOf } from "./packs.ts";
import { vineLots } from "./vine-lots.ts";

export interface Materials {
  /** The shopping list, in the order of the work. */
  readonly lines: readonly MaterialLine[];
  /** How coils are cut, an article each: wire in the order of the trellis, then hose. */
  readonly coils: readonly { readonly job: CutJob; readonly plan: CutPlan }[];
  readonly cost: MaterialCost;
  /** In the order of the plan's rows, and of its blocks: shares of the whole cost by what each needs. */
  readonly rowCosts: readonly MaterialCost[];
  readonly blockCosts: readonly MaterialCost[];
}

/** The shopping list, the cutting plans and what they cost. */
export function materials(
  rows: Rows,
  trellis: Trellis,
  drip: Drip,
  blocks: readonly Block[],
  settings: MaterialSettings,
): Outcome<Materials> {
  const plantings = vineLots(rows.rows, blocks, settings.vineSpare_ratio);
  const lines = [
    ...trellis.wires.map(({ article, diameter_mm, length_m }) =>
      line(
        article,
        "Wire",
        say`${inUnits("diameter", diameter_mm)}`,
        "m",
        length_m,
        settings.wireCoils_m[0] ?? 1,
        diameter_mm,
      ),
    ),
    line("hose", "Drip hose", [], "m", drip.lateral_m, settings.hoseCoils_m[0] ?? 1, null),
    ...plantings.lots.map((lot) =>
      line(`vine-${lot.variety}`, "Vines", [lot.variety ?? ""], "pieces", orderOf(lot.withSpare, 0), 1, null),
    ),
  ].filter((each) => each.quantity > 0);
  const cost: MaterialCost = { price: 0, unpriced: lines.length, mass_kg: 0 };
  return success({ lines, coils: [], cost, rowCosts: [], blockCosts: [] }, plantings.findings);
}

function line(
  article: string,
  item: string,
  spec: Phrase,
  unit: "m" | "pieces",
  quantity: number,
  size: number,
  diameter_mm: number | null,
): MaterialLine {
  return {
    article,
    item,
    spec,
    unit,
    needed: quantity,
    spare: 0,
    quantity,
    onHand: 0,
    toBuy: quantity,
    packs: packsOf(quantity, size).map((pack) => ({ ...pack, price: null, mass_kg: null })),
    price: null,
    mass_kg: null,
    isTwoPersonLift: false,
    purpose: "",
    diameter_mm,
  };
}
