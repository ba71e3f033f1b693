import type { Exempt } from "./clearance.ts";
import type { RouteGraph } from "./route-graph.ts";
import type { RouteJob } from "./route-job.ts";
import type { RowGroup } from "./row-groups.ts";

/** Places of the other parcels that are tried from each head. */
const tried = 300;
/** Ways over ground that is in no parcel count so much more, so that they are short. */
const foreignFactor = 1.5;

/**
 * Links groups that no trench gets to with the nearest places of other parcels, over the ground between: with a road in between, parcels
 * have no other way. Other barriers hold. False when there is only one parcel, or nothing was added.
 */
export function addBridges({ draft, heads }: RouteGraph, job: RouteJob, groups: readonly RowGroup[]): boolean {
  const { outline } = job.barriers;
  const outlines = new Set(outline);
  outlines.delete(-1);
  if (outlines.size < 2) return false;
  const boundary = new Set<number>();
  outline.forEach((of, i) => {
    if (of >= 0) boundary.add(i);
  });
  const exempt: Exempt = { near_m: new Map(), rows_m: new Map(), crossed: boundary };
  const parcels = Array.from({ length: draft.xy.length / 2 }, (_, node) => {
    const [x, y] = draft.placeOf(node);
    return outlineAround(job, x, y);
  });
  let isAdded = false;
  for (const { rows, ends } of groups) {
    for (const side of ends) {
      for (const row of new Set([rows[0], rows.at(-1)])) {
        const head = Number(heads[2 * Number(row) + side]);
        const [x, y] = draft.placeOf(head);
        const elsewhere = parcels
          .flatMap((parcel, node) => (parcel === parcels[head] ? [] : [node]))
          .map((node) => ({ node, away_m: Math.hypot(draft.placeOf(node)[0] - x, draft.placeOf(node)[1] - y) }))
          .sort((a, b) => a.away_m - b.away_m);
        for (const { node } of elsewhere.slice(0, tried)) {
          if (draft.linkIfClear(head, node, foreignFactor, exempt) >= 0) isAdded = true;
        }
      }
    }
  }
  return isAdded;
}

/** Number of the parcel outline that a place is in; -1 for none. Even-odd. */
function outlineAround({ barriers }: RouteJob, x: number, y: number): number {
  const inside = new Map<number, boolean>();
  barriers.outline.forEach((outline, i) => {
    if (outline < 0) return;
    const [px = 0, py = 0, qx = 0, qy = 0] = barriers.xy.subarray(4 * i, 4 * i + 4);
    if (py > y !== qy > y && x < px + ((y - py) * (qx - px)) / (qy - py))
      inside.set(outline, !(inside.get(outline) ?? false));
  });
  return [...inside].find(([, isIn]) => isIn)?.[0] ?? -1;
}
