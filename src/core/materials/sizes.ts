import type { MaterialSettings } from "../project/project.ts";
import { catalog, isListed, type MaterialKind } from "./catalog.ts";
import type { Need } from "./need.ts";
import type { PackageSize } from "./packages.ts";

/** The packages of the price list that an article comes in, else the one that is usual for it. */
export function packageSizes(need: Need, settings: MaterialSettings): readonly PackageSize[] {
  const entries = settings.prices.filter(({ article }) => article === need.article);
  const usual = { size: packOf(need.kind, settings), price: joinPrice(need, settings), mass_kg: null };
  return (entries.length > 0 ? entries : [usual]).map(({ size, price, mass_kg }) => ({
    size,
    covers: size,
    price,
    mass_kg: mass_kg ?? massOf(need, size),
  }));
}

/** Sizes that a kind of thing is usually sold in, in metres or pieces. */
export function usualSizes(kind: MaterialKind, settings: MaterialSettings): readonly number[] {
  if (kind === "hose") return settings.hoseCoils_m;
  if (kind === "riser") return [riserCoil_m];
  if (kind === "valve-wire") return valveWireCoils_m;
  if (kind === "wire" || kind === "tie-wire" || kind === "brace-wire") return settings.wireCoils_m;
  return [packOf(kind, settings)];
}

/** What lies in a trench or has to do with the water is bought by the piece. */
function packOf(kind: MaterialKind, settings: MaterialSettings): number {
  return isListed(kind) ? catalog[kind].pack(settings) : 1;
}

/** Riser pipe comes in coils of 100 ft. Common practice, no source. */
const riserCoil_m = 30.48;
/** Wire to bury comes in coils of 250, 500, 1000 and 2500 ft. Common practice, no source. */
const valveWireCoils_m = [76.2, 152.4, 304.8, 762];

function massOf({ mass_kg }: Need, size: number): number | null {
  return mass_kg === null ? null : mass_kg * size;
}

function joinPrice({ kind }: Need, { cutting }: MaterialSettings): number | null {
  if (kind === "wire-join") return cutting.wireJoinPrice;
  return kind === "hose-join" ? cutting.hoseJoinPrice : null;
}
