import { useStore } from "../store-context.ts";

/** Says that another tab works on the project, and what can be done about it. */
export function ReadingBar() {
  const { keeping } = useStore();
  const keeper = keeping.keeper.value;
  if (!keeping.isReading.value) return null;
  const isTakingOver = keeping.isTakingOver.value;
  return (
    <section class="keeping-bar is-reading" aria-label="Open in another tab">
      <p>
        <strong>This project is open in another tab.</strong>{" "}
        {isTakingOver ? "The other tab is asked to let go…" : "Here it can be looked at; it shows what is done there."}
      </p>
      <button type="button" class="strong-button" disabled={isTakingOver} onClick={() => void keeper?.workHere()}>
        Work here instead
      </button>
      <button type="button" onClick={() => void keeper?.makeCopy()}>
        Make a copy
      </button>
    </section>
  );
}
