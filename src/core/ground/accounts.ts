import { type Account, account, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { GroundSettings } from "../project/project.ts";
import type { Ground, Rings } from "./ground.ts";
import { areaOf } from "./middle.ts";

/** How the parcels' area came about, m². Shoelace formula in the local plane; ground that two outlines share counts once. */
export function parcelAreaAccount(ground: Ground): Account {
  const areas_m2 = outlinesOf(ground).map((rings) => areaOf(rings).area_m2);
  const sum_m2 = areas_m2.reduce((sum, area_m2) => sum + area_m2, 0);
  const shared_m2 = sum_m2 - ground.parcelArea_m2;
  const isShared = shared_m2 > leastShared_m2;
  return account(
    {
      formula: isShared
        ? say`Area within the outlines, less holes, less the ground that outlines share, so that it counts once.`
        : say`Area within the outline, less holes, reckoned from its corners (shoelace formula) in a plane laid around the parcel.`,
      inputs: [
        inputs(areas_m2.length > 1 ? "Outlines" : "Outline", "area", areas_m2),
        ...(isShared ? [input("Shared ground", "area", shared_m2)] : []),
        remark("Corners", String(corners(ground))),
      ],
      source: `${geometry}; plane: transverse Mercator on the WGS 84 ellipsoid`,
    },
    (outlines_m2, twice_m2 = 0) => Number(outlines_m2) - twice_m2,
  );
}

/** How the planting area came about, m²; null while it is not known. */
export function plantingAreaAccount(ground: Ground, settings: GroundSettings): Account | null {
  const polygons = ground.plantingArea;
  if (polygons === null) return null;
  const areas_m2 = polygons.map((rings) => areaOf(ringsOf(rings)).area_m2);
  return account(
    {
      formula: say`What is left of the parcel when everything nearer than its setback to an edge, or nearer than its distance to an obstacle, is taken out. Headlands are not taken out.`,
      inputs: [
        inputs(
          areas_m2.length > 1 ? "Pieces that are left" : "What is left, the tinted ground on the map",
          "area",
          areas_m2,
        ),
        remark(
          "Setback from edges",
          say`${quantity("length", settings.setback_m)} unless an edge or parcel states its own`,
        ),
        remark(
          "Distance from obstacles",
          say`${quantity("length", settings.obstacleDistance_m)} unless one states its own`,
        ),
        remark(
          "Distance from no-plant lines",
          say`${quantity("length", settings.noPlantDistance_m)} unless one states its own`,
        ),
      ],
      source: `${geometry}; the usual distances are ${commonPractice}`,
    },
    (left_m2) => Number(left_m2),
  );
}

const leastShared_m2 = 0.01;

function outlinesOf(ground: Ground): readonly Rings[] {
  const fullest = ground.blocks.reduce<readonly { readonly rings: Rings }[]>(
    (most, { outlines }) => (outlines.length > most.length ? outlines : most),
    [],
  );
  return fullest.map(({ rings }) => rings);
}

function corners(ground: Ground): number {
  return outlinesOf(ground).reduce((sum, { xy }) => sum + xy.length / 2, 0);
}

function ringsOf(polygon: readonly Float64Array[]): Rings {
  const ringStart = [0];
  for (const ring of polygon) ringStart.push(Number(ringStart.at(-1)) + ring.length / 2);
  return { xy: Float64Array.from(polygon.flatMap((ring) => [...ring])), ringStart: Int32Array.from(ringStart) };
}
