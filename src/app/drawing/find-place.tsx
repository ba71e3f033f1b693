import { useId, useState } from "preact/hooks";
import { parsePlace } from "../../core/drawing/place.ts";
import { useStore } from "../store-context.ts";
import { onePosition } from "./follow-position.ts";
import { takeUp } from "./sketch.ts";
import { parcelTool } from "./tools.ts";

/** Where to begin on an empty map: find the place, then draw the parcel. */
export function FindPlace() {
  const store = useStore();
  const { drawing, project } = store;
  const [typed, setTyped] = useState("");
  const [told, setTold] = useState<{ readonly sentence: string; readonly isRefusal: boolean } | null>(null);
  const id = useId();
  const isEmpty = (project.value?.document.features.length ?? 1) === 0;
  if (!isEmpty || drawing.tool.value || drawing.putAside.value || drawing.isPaletteOpen.value) return null;
  const go = (): void => {
    const place = parsePlace(typed);
    if (place.ok) drawing.lookAt.value = place.at;
    setTold(
      place.ok
        ? { sentence: "The map is there now.", isRefusal: false }
        : { sentence: `“${typed}” was not understood: ${place.reason}.`, isRefusal: true },
    );
  };
  const here = (): void => {
    setTold({ sentence: "Waiting for your position…", isRefusal: false });
    onePosition({
      onPosition: ({ at }) => {
        drawing.lookAt.value = at;
        setTold({ sentence: "The map is where you are.", isRefusal: false });
      },
      onTrouble: (sentence) => setTold({ sentence, isRefusal: true }),
    });
  };
  return (
    <section class="find-place" aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>Where is your ground?</h2>
      <label for={`${id}-place`}>Latitude and longitude</label>
      <div class="find-place-row">
        <input
          id={`${id}-place`}
          type="text"
          autocomplete="off"
          spellcheck={false}
          placeholder="38.2914, -122.4580"
          value={typed}
          aria-invalid={told?.isRefusal ?? false}
          aria-describedby={`${id}-told`}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            setTold(null);
          }}
          onKeyDown={(event) => {
            if (event.key === "Enter") go();
          }}
        />
        <button type="button" disabled={typed.trim() === ""} onClick={go}>
          Go there
        </button>
      </div>
      <p id={`${id}-told`} class={told?.isRefusal ? "field-refusal" : "aside"} role="status">
        {told?.sentence ?? "The map moves there. Nothing is sent anywhere."}
      </p>
      <div class="find-place-buttons">
        <button type="button" onClick={here}>
          Use my position
        </button>
        <button type="button" class="strong-button" onClick={() => takeUp(store, parcelTool)}>
          Draw the parcel
        </button>
      </div>
    </section>
  );
}
