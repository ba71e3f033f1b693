import type { Project } from "../../core/project/project.ts";
import { current } from "../history.ts";
import type { Store } from "../store.ts";
import { movesRows } from "./moves-rows.ts";

/** Is the project one that is held just now, with rows that move? Then no route and no watering follow until it is let go. */
export function areRowsHeld(store: Store, project: Project): boolean {
  const history = store.history.peek();
  return store.draft.peek() === project && history !== null && movesRows(current(history).project, project);
}
