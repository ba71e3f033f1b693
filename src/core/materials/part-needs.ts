import type { WaterPart } from "../drip/watering.ts";
import type { Trench, TrenchPart } from "../trench/trench.ts";
import type { Need } from "./need.ts";

/**
 * What the trench takes. What serves all rows is shared evenly by those that have a tee, since without any one of them the line would be
 * much the same; by all rows where none has one.
 */
export function trenchNeeds(trench: Trench): readonly Need[] {
  return shared(trench.parts, sharingOf(trench.leads_m.length, trench));
}

/** What the water takes beside it, of which what serves all rows is shared in the same way. */
export function waterNeeds(parts: readonly WaterPart[], rows: number, trench: Trench | null): readonly Need[] {
  const sharing = sharingOf(rows, trench);
  const told = parts.map((part): WaterPart => {
    const { perRow, purpose } = part;
    const taking = (perRow ?? sharing).filter((each) => each > 0).length;
    const inWords = taking === 1 ? "1 row" : `${taking} rows`;
    return { ...part, purpose: `${purpose}; ${perRow === null ? "serves " : ""}${inWords}` };
  });
  return shared(told, sharing);
}

/** 1 for every row that has a tee; for every row where none has. */
function sharingOf(rows: number, trench: Trench | null): readonly number[] {
  const fed = new Array<number>(rows).fill(0);
  for (const { row } of trench?.profiles ?? []) for (const each of row) if (each >= 0) fed[each] = 1;
  return fed.some((each) => each > 0) ? fed : fed.map(() => 1);
}

function shared(parts: readonly (TrenchPart | WaterPart)[], sharing: readonly number[]): readonly Need[] {
  const sharers = sharing.reduce((sum, each) => sum + each, 0);
  return parts.map(({ article, kind, item, spec, spare, unit, quantity, perRow, pieces_m, purpose }): Need => {
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
      purpose: perRow === null && sharers > 1 ? `${purpose}, who share it evenly` : purpose,
      mass_kg: null,
    };
  });
}
