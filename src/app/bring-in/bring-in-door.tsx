import { useRef } from "preact/hooks";
import { bringIn } from "../commands/bring-in.ts";
import { FileInput, openedFiles } from "../file-input.tsx";
import { useStore } from "../store-context.ts";

/** The ways to bring in what others have drawn or measured: a file of any open format, or corners as text. */
export function BringInDoor() {
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class="bring-in-door">
      <button type="button" onClick={() => input.current?.click()}>
        Bring in a file
      </button>
      <button type="button" onClick={() => void bringIn(store, { kind: "corners" })}>
        Paste corners
      </button>
      <FileInput field={input} accept={openedFiles} take={(file) => void bringIn(store, { kind: "file", file })} />
    </div>
  );
}
