import type { Map as MapLibreMap } from "maplibre-gl";
import { chooseRow } from "../commands/choose-row.ts";
import type { Store } from "../store.ts";

/**
 * What a click means while nothing is drawn: a side of what is selected, else a row, else a drawn thing, else nothing is selected any more.
 * Handles are buttons of their own and do not let a click through.
 */
export async function clickOnMap(
  map: MapLibreMap,
  store: Store,
  at: { readonly x: number; readonly y: number },
  row: string | null,
): Promise<void> {
  const { drawing } = store;
  const project = store.project.peek();
  if (drawing.tool.peek() || !project) return;
  const selected = drawing.selected.peek();
  if (selected === null && row !== null) {
    chooseRow(store, row);
    return;
  }
  if (selected === null) chooseRow(store, null);
  if (project.document.features.length === 0) return;
  const { select, selectSide } = await import("../drawing/select.ts");
  const { sideAt, thingAt } = await import("../drawing/pick.ts");
  const side = selected === null ? null : sideAt(map, project, selected, at);
  if (side) selectSide(store, side);
  else if (row !== null) {
    select(store, null);
    chooseRow(store, row);
  } else select(store, thingAt(map, project, at));
}
