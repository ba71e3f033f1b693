import type { Store } from "../store.ts";
import { finish, putAside, takeBack } from "./sketch.ts";

/** Keys while something is drawn: Enter ends it, Backspace takes the last corner back, Escape lets go, twice gives up. Returns what stops it. */
export function followKeys(store: Store): () => void {
  const { drawing } = store;
  const pressed = (event: KeyboardEvent): void => {
    if (!drawing.tool.peek() || event.defaultPrevented) return;
    const target = event.target;
    const isField = target instanceof HTMLInputElement || target instanceof HTMLSelectElement;
    const isButton = target instanceof HTMLButtonElement;
    const takesBack =
      event.key === "Backspace" || ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z");
    if (event.key === "Escape") {
      if (drawing.held.peek()) drawing.held.value = null;
      else putAside(store);
    } else if (takesBack && !isField && drawing.corners.peek().length > 0) takeBack(store);
    else if (event.key === "Enter" && !isField && !isButton) finish(store);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  window.addEventListener("keydown", pressed, { capture: true });
  return () => window.removeEventListener("keydown", pressed, { capture: true });
}
