import type { Store } from "../store.ts";
import { select, selectSide } from "./select.ts";
import { finish, putAside, takeBack } from "./sketch.ts";

/**
 * Keys while something is drawn: Enter ends it, Backspace and Ctrl+Z take the last corner back, Escape lets the corner in hand go and, the
 * second time, the drawing. While nothing is drawn Escape leaves the selected side, then the selected thing. Returns what stops it.
 */
export function followKeys(store: Store): () => void {
  const { drawing } = store;
  const pressed = (event: KeyboardEvent): void => {
    if (!drawing.tool.peek() || event.defaultPrevented) return;
    const isButton = event.target instanceof HTMLButtonElement;
    const typed = typedIn(event.target);
    if (event.key === "Escape") {
      if (drawing.held.peek()) drawing.held.value = null;
      else putAside(store);
    } else if (takesBack(event, typed) && drawing.corners.peek().length > 0) takeBack(store);
    else if (event.key === "Enter" && typed === null && !isButton) finish(store);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  // After everything that has a use for Escape of its own.
  const escaped = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || event.defaultPrevented || drawing.tool.peek()) return;
    if (drawing.side.peek()) selectSide(store, null);
    else if (typedIn(event.target) === null) select(store, null);
  };
  window.addEventListener("keydown", pressed, { capture: true });
  window.addEventListener("keydown", escaped);
  return () => {
    window.removeEventListener("keydown", pressed, { capture: true });
    window.removeEventListener("keydown", escaped);
  };
}

/** What stands in the field that has the keyboard; null when it is no field. */
function typedIn(target: EventTarget | null): string | null {
  if (target instanceof HTMLSelectElement) return target.value;
  return target instanceof HTMLInputElement && target.type === "text" ? target.value : null;
}

function takesBack(event: KeyboardEvent, typed: string | null): boolean {
  if (event.key === "Backspace") return typed === null;
  const isUndo = (event.ctrlKey || event.metaKey) && !event.shiftKey && event.key.toLowerCase() === "z";
  return isUndo && (typed === null || typed === "");
}
