import type { Trench, TrenchPart } from "../trench/trench.ts";
import type { Need } from "./need.ts";

/**
 * What the trench takes. What serves all rows is shared evenly by those that have a tee, since without any one of them the line would be
 * much the same; by all rows where none has one.
 */
export function trenchNeeds({ parts, leads_m, profiles }: Trench): readonly Need[] {
  const fed = leads_m.map(() => 0);
  for (const { row } of profiles) for (const each of row) if (each >= 0) fed[each] = 1;
  const sharing = fed.some((each) => each > 0) ? fed : fed.map(() => 1);
  const sharers = sharing.reduce((sum, each) => sum + each, 0);
  return parts.map((part): Need => {
    const { article, kind, item, spec, spare, unit, quantity, perRow, pieces_m, purpose } = part;
    return {
      article,
      kind,
      item,
      spec,
      unit,
      diameter_mm: null,
      perRow: perRow ?? sharing.map((share) => (share * quantity) / sharers),
      isShared: perRow === null,
      pieces_m: unit === "m" ? pieces_m : [],
      spare: { pieces: spare },
      purpose: isSharedBySome(part, sharers) ? `${purpose}, who share it evenly` : purpose,
      mass_kg: null,
    };
  });
}

function isSharedBySome({ perRow }: TrenchPart, sharers: number): boolean {
  return perRow === null && sharers > 1;
}
