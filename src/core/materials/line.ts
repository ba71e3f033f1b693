import type { MaterialSettings } from "../project/project.ts";
import { catalog, isListed, type SpareRule } from "./catalog.ts";
import { coilPacks } from "./coil-packs.ts";
import { stockCoils_m } from "./cutting/coil-sizes.ts";
import type { CutJob } from "./cutting/cut-job.ts";
import type { CutPlan } from "./cutting/cut-plan.ts";
import { mostLift_kg } from "./lift.ts";
import type { MaterialLine, Pack } from "./material-line.ts";
import type { Need } from "./need.ts";
import { packagesFor } from "./packages.ts";
import { orderOf } from "./packs.ts";
import { packageSizes } from "./sizes.ts";

/** One line of the list: what is needed and spare, less what is on hand, in packages. */
export function lineOf(need: Need, job: CutJob | null, plan: CutPlan | null, settings: MaterialSettings): MaterialLine {
  const isCoiled = need.unit === "m";
  const sum = need.perRow.reduce((total, each) => total + each, 0);
  // Even shares of whole pieces add up to whole pieces but for rounding dust.
  const needed = isCoiled ? sum : Math.round(sum);
  const spareBy = need.spare ?? (isListed(need.kind) ? catalog[need.kind].spare(settings) : { pieces: 0 });
  const quantity = isCoiled ? needed : withSpare(needed, spareBy);
  const onHand = isCoiled
    ? stockCoils_m(need.article, settings).reduce((sum_m, coil_m) => sum_m + coil_m, 0)
    : settings.onHand.reduce((there, { article, pieces }) => (article === need.article ? there + pieces : there), 0);
  const packs = isCoiled
    ? coilPacks(need, job, plan, settings)
    : packagesFor(quantity - onHand, packageSizes(need, settings), "pieces");
  const held = packs.reduce((total, { size, count }) => total + size * count, 0);
  return {
    article: need.article,
    kind: need.kind,
    item: need.item,
    spec: need.spec,
    unit: need.unit,
    isShared: need.isShared,
    needed,
    spare: quantity - needed,
    spareBy,
    quantity,
    onHand,
    toBuy: isCoiled ? held : Math.max(0, quantity - onHand),
    packs,
    price: ofAll(packs, ({ price }) => price),
    mass_kg: ofAll(packs, ({ mass_kg }) => mass_kg),
    isTwoPersonLift: packs.some(({ mass_kg }) => (mass_kg ?? 0) > mostLift_kg),
    purpose: need.purpose,
    diameter_mm: need.diameter_mm,
  };
}

/** Needed and spare together, in whole pieces. */
export function withSpare(needed: number, spareBy: SpareRule): number {
  return "ratio" in spareBy ? orderOf(needed, spareBy.ratio) : needed + spareBy.pieces;
}

/** Sum over all packages; null when one of them has none. Nothing to buy is nothing. */
function ofAll(packs: readonly Pack[], of: (pack: Pack) => number | null): number | null {
  return packs.reduce<number | null>((sum, pack) => {
    const one = of(pack);
    return sum === null || one === null ? null : sum + one * pack.count;
  }, 0);
}
