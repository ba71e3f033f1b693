import { download, fileStem } from "../download.ts";
import { useStore } from "../store-context.ts";
import { dateText } from "./date-text.ts";

/** A kept project that can not be read any more: what is left of it, and the way back to an earlier state. */
export function UnreadableBar() {
  const { keeping } = useStore();
  const found = keeping.unreadable.value;
  if (!found) return null;
  const { record, text, reason, earlier } = found;
  return (
    <div class="keeping-bar is-failure" role="alert">
      <p>
        <strong>“{record.name}” can not be read any more.</strong> {reason}{" "}
        {earlier ? "An earlier state of it can." : "No earlier state of it can be read either."}
      </p>
      {earlier && (
        <button type="button" class="strong-button" onClick={() => void keeping.keeper.value?.openEarlier(found)}>
          Open the state of {dateText(earlier.at)}
        </button>
      )}
      {text !== null && (
        <button type="button" onClick={() => download(`${fileStem(record.name)}.txt`, text, "text/plain")}>
          Download what is kept
        </button>
      )}
      <button
        type="button"
        class="quiet-button"
        onClick={() => {
          keeping.unreadable.value = null;
        }}
      >
        Close
      </button>
    </div>
  );
}
