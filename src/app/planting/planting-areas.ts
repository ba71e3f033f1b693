import { signal } from "@preact/signals";
import type { PlantingAreaOf } from "../../core/ground/planting-area.ts";
import type { Overlay, PlantingParts } from "../../core/plane/overlay.ts";

/** The planting areas that have been worked out, for the planner; those that are not are worked out elsewhere and learned. */
export interface PlantingAreas {
  /** The planting area when it is known, else null; a plan that was made without one is made anew when one is learned. */
  readonly of: PlantingAreaOf;
  learn(parts: PlantingParts, area: Overlay): void;
}

/** Nothing known yet. */
export function createPlantingAreas(): PlantingAreas {
  const known = new WeakMap<PlantingParts, Overlay>();
  const learned = signal(0);
  return {
    of: (parts) => {
      const area = known.get(parts);
      if (area !== undefined) return area;
      // Read only for what is not known, so that nothing else is planned twice.
      void learned.value;
      return null;
    },
    learn: (parts, area) => {
      known.set(parts, area);
      learned.value += 1;
    },
  };
}
