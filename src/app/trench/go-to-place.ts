import { batch } from "@preact/signals";
import type { Plan } from "../../core/plan.ts";
import { planePoint } from "../../core/plane/coordinate.ts";
import { placeOnTrench } from "../../core/trench/place-on-trench.ts";
import type { Store } from "../store.ts";

/** A place on the trench is looked for no further away than this. */
const reach_m = 1;

/** Moves the map to a place of the trench when it is out of sight, and marks it there and in the side view. */
export function goToPlace(store: Store, plan: Plan, [x_m, y_m]: readonly [x_m: number, y_m: number]): void {
  const [route, branches, frame] = [plan.mainline?.route, plan.trench?.branches, plan.ground?.frame];
  if (!route || !branches || !frame) return;
  batch(() => {
    store.trenchPlace.value = placeOnTrench(route, branches, [x_m, y_m], reach_m);
    store.drawing.isAwake.value = true;
    store.drawing.lookAt.value = frame.toLonLat(planePoint(x_m, y_m));
  });
}
