import { useEffect, useState } from "preact/hooks";
import { openFile } from "./commands/open-file.ts";
import { useStore } from "./store-context.ts";
import { words } from "./words.ts";

/** Takes a file that is dropped anywhere on the page, and says so while one hovers. */
export function DropTarget() {
  const store = useStore();
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (!event.dataTransfer?.types.includes("Files")) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      const file = event.dataTransfer?.files[0];
      setOver(false);
      if (!file) return;
      event.preventDefault();
      void openFile(store, file);
    };
    window.addEventListener("dragover", over);
    window.addEventListener("dragleave", leave);
    window.addEventListener("drop", drop);
    return () => {
      window.removeEventListener("dragover", over);
      window.removeEventListener("dragleave", leave);
      window.removeEventListener("drop", drop);
    };
  }, [store]);
  return isOver ? <div class="drop-now">{words.dropNow}</div> : null;
}
