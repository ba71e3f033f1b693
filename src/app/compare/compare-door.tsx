import { useId, useRef, useState } from "preact/hooks";
import { lazily } from "../lazily.tsx";

const View = lazily(async () => (await import("./compare-view.tsx")).CompareView);

/** The way to see what a change of mind would cost; the view is fetched when it is asked for. */
export function CompareDoor() {
  const [isOpen, setOpen] = useState(false);
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  return (
    <>
      <button
        type="button"
        class="compare-door"
        aria-haspopup="dialog"
        onClick={() => {
          setOpen(true);
          dialog.current?.showModal();
        }}
      >
        What would a change cost?
      </button>
      <dialog ref={dialog} class="open-dialog compare-dialog" aria-labelledby={id} onClose={() => setOpen(false)}>
        <h2 id={id}>What would a change cost?</h2>
        {isOpen && <View />}
        <form method="dialog">
          <button type="submit" class="quiet-button">
            Close
          </button>
        </form>
      </dialog>
    </>
  );
}
