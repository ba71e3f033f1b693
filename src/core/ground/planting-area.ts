import type { Finding } from "../finding.ts";
import { planePoint } from "../plane/coordinate.ts";
import type { Overlay, PlantingParts } from "../plane/overlay.ts";
import { nothingToPlant } from "./findings.ts";
import type { Ground } from "./ground.ts";

/** Works a planting area out, or says that it is not known yet. */
export type PlantingAreaOf = (parts: PlantingParts) => Overlay | null;

/**
 * The ground with its planting area, where that is known; rows never depend on it. Findings: `ground/nothing-to-plant` for every block
 * when none is left.
 */
export function withPlantingArea(
  ground: Ground,
  planted: Overlay | null,
): { readonly ground: Ground; readonly findings: readonly Finding[] } {
  if (planted === null) return { ground, findings: [] };
  return {
    ground: { ...ground, plantingArea_m2: planted.area_m2, plantingArea: planted.polygons },
    findings:
      planted.area_m2 > 0
        ? []
        : ground.blocks.map(({ block, centre }) =>
            nothingToPlant(ground.frame.toLonLat(planePoint(centre[0], centre[1])), block),
          ),
  };
}
