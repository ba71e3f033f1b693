import { redo, undo } from "./commands/undo.ts";
import type { Store } from "./store.ts";

/**
 * Ctrl or Cmd with Z takes a step back; with Shift, or Ctrl with Y, brings it again. While something is typed in a text field and not
 * yet given to the project, the keys are the field's own. Gives back how to stop.
 */
export function followUndoKeys(store: Store): () => void {
  const typed = new WeakSet<EventTarget>();
  const begin = (event: Event): void => {
    if (event.target && isText(event.target)) typed.add(event.target);
  };
  const end = (event: Event): void => {
    if (event.target) typed.delete(event.target);
  };
  const press = (event: KeyboardEvent): void => {
    const { target } = event;
    if ((event.key === "Enter" || event.key === "Escape") && target) typed.delete(target);
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const isUndo = key === "z" && !event.shiftKey;
    const isRedo = (key === "z" && event.shiftKey) || (key === "y" && !event.shiftKey);
    if (!isUndo && !isRedo) return;
    if (document.querySelector("dialog[open]") || (target && typed.has(target))) return;
    event.preventDefault();
    if (isUndo) undo(store);
    else redo(store);
  };
  window.addEventListener("input", begin, { capture: true });
  window.addEventListener("focusout", end, { capture: true });
  window.addEventListener("keydown", press);
  return () => {
    window.removeEventListener("input", begin, { capture: true });
    window.removeEventListener("focusout", end, { capture: true });
    window.removeEventListener("keydown", press);
  };
}

function isText(target: EventTarget): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && /^(text|search|number|email|url|tel)$/.test(target.type);
}
