import { current } from "../history.ts";
import type { Store } from "../store.ts";
import { undo } from "./undo.ts";

/** Takes the step back that was made under this mark, if it is the one that is shown: what was typed in one stay in a field. */
export function takeBack(store: Store, joins: string): void {
  const history = store.history.value;
  if (history && history.at > 0 && current(history).joins === joins) undo(store);
}
