import type { MaterialSettings } from "../../project/project.ts";
import type { CoilSize, CutJob } from "./cut-job.ts";

/** Coils and part coils of an article that are there already, m. */
export function stockCoils_m(article: string, { onHand }: MaterialSettings): readonly number[] {
  return onHand.filter((entry) => entry.article === article).flatMap(({ coils_m }) => coils_m);
}

/** Sizes that can be had: of the price list, else the usual ones; those that are too heavy to handle apart. */
export function coilSizes(
  article: string,
  usual_m: readonly number[],
  mass_kgpm: number | null,
  { prices, cutting }: MaterialSettings,
): Pick<CutJob, "sizes" | "tooHeavy"> {
  const listed = prices.filter((entry) => entry.article === article && entry.size > 0);
  const named =
    listed.length > 0
      ? listed.map(({ size, price, mass_kg }) => ({ length_m: size, price, mass_kg }))
      : usual_m.map((length_m) => ({ length_m, price: null, mass_kg: null }));
  const all = named.map(
    (size): CoilSize => ({
      ...size,
      mass_kg: size.mass_kg ?? (mass_kgpm === null ? null : mass_kgpm * size.length_m),
    }),
  );
  const isHeavy = ({ mass_kg }: CoilSize) =>
    cutting.heaviestCoil_kg !== null && mass_kg !== null && mass_kg > cutting.heaviestCoil_kg;
  return { sizes: all.filter((size) => !isHeavy(size)), tooHeavy: all.filter(isHeavy) };
}
