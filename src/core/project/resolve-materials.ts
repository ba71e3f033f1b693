import type { CuttingSettings, MaterialSettings } from "./project.ts";
import type { materialsSection } from "./schema.ts";
import type { Stated } from "./schema-parts.ts";

type MaterialsStated = Stated<typeof materialsSection>;

/** Packages, spares, cutting, what is on hand and the price list, over what is usual. */
export function materialSettings(stated: MaterialsStated, usual: MaterialSettings): MaterialSettings {
  return {
    wireCoils_m: stated.wireCoil ?? usual.wireCoils_m,
    hoseCoils_m: stated.hoseCoil ?? usual.hoseCoils_m,
    cutting: cuttingSettings(stated, usual.cutting),
    stakeClipBag: stated.stakeClipBag ?? usual.stakeClipBag,
    hoseClipBag: stated.hoseClipBag ?? usual.hoseClipBag,
    emitterBag: stated.emitterBag ?? usual.emitterBag,
    stapleBag: stated.stapleBag ?? usual.stapleBag,
    vineSpare_ratio: stated.vineSpare ?? usual.vineSpare_ratio,
    clipSpare_ratio: stated.clipSpare ?? usual.clipSpare_ratio,
    gripperSpare_ratio: stated.gripperSpare ?? usual.gripperSpare_ratio,
    emitterSpare_ratio: stated.emitterSpare ?? usual.emitterSpare_ratio,
    linePostSpare_ratio: stated.linePostSpare ?? usual.linePostSpare_ratio,
    stakeSpare_ratio: stated.stakeSpare ?? usual.stakeSpare_ratio,
    endPostSpare: stated.endPostSpare ?? usual.endPostSpare,
    onHand:
      stated.onHand?.map(({ article, pieces, coils }) => ({ article, pieces: pieces ?? 0, coils_m: coils ?? [] })) ??
      usual.onHand,
    prices:
      stated.prices?.map(({ article, size, price, mass, note }) => ({
        article,
        size,
        price: price ?? null,
        mass_kg: mass ?? null,
        note: note ?? null,
      })) ?? usual.prices,
    currency: stated.currency ?? usual.currency,
  };
}

function cuttingSettings(stated: MaterialsStated, usual: CuttingSettings): CuttingSettings {
  return {
    reserve_ratio: stated.coilReserveShare ?? usual.reserve_ratio,
    reserve_m: stated.coilReserve ?? usual.reserve_m,
    slop_m: stated.cutSlop ?? usual.slop_m,
    wireJoins: stated.wireJoins ?? usual.wireJoins,
    hoseJoins: stated.hoseJoins ?? usual.hoseJoins,
    joinLength_m: stated.joinLength ?? usual.joinLength_m,
    wireJoinPrice: stated.wireJoinPrice ?? usual.wireJoinPrice,
    hoseJoinPrice: stated.hoseJoinPrice ?? usual.hoseJoinPrice,
    heaviestCoil_kg: stated.heaviestCoil ?? usual.heaviestCoil_kg,
  };
}
