import { batch } from "@preact/signals";
import type { FeatureKey } from "../../core/project/project.ts";
import type { Store } from "../store.ts";
import { labelOf } from "./corner-edits.ts";
import type { SideChoice } from "./drawing-state.ts";

/** Selects a drawn thing, or none. */
export function select(store: Store, key: FeatureKey | null): void {
  const { drawing } = store;
  batch(() => {
    if (drawing.selected.peek() === null && key === null) return;
    drawing.selected.value = key;
    drawing.side.value = null;
    drawing.trouble.value = null;
    if (key !== null) {
      drawing.isAwake.value = true;
      store.row.value = null;
      drawing.said.value = `${labelOf(store, key)} selected.`;
    }
  });
}

/** Selects a side of what is selected, or none. */
export function selectSide(store: Store, side: SideChoice | null): void {
  batch(() => {
    store.drawing.side.value = side;
    if (side) store.drawing.said.value = `Side ${side.edge + 1} selected.`;
  });
}
