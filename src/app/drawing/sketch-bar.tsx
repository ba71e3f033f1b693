import { useEffect, useId, useRef, useState } from "preact/hooks";
import { parseQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { withShownUnit } from "../typed-quantity.ts";
import type { Tool } from "./drawing-state.ts";
import { MeasureResult } from "./measure-result.tsx";
import { finish, placeCorner, putAside, takeBack } from "./sketch.ts";
import { cornersOf } from "./tools.ts";
import { typedCorner } from "./typed-corner.ts";
import { WalkPart } from "./walk-part.tsx";

/** What is drawn now, at the foot of the map: the next corner typed, the end of the drawing, the way back. */
export function SketchBar() {
  const { drawing } = useStore();
  const tool = drawing.tool.value;
  return tool ? <Bar key={`${tool.role} ${tool.shape}`} tool={tool} /> : null;
}

function Bar({ tool }: { readonly tool: Tool }) {
  const store = useStore();
  const { drawing } = store;
  const corners = drawing.corners.value;
  const { least } = cornersOf(tool);
  const height = useHeight();
  const needsHeight = tool.role === "elevation";
  const end = (): void => finish(store, needsHeight ? height.read() : null);
  const isMeasure = tool.role === "measure";
  return (
    <section class="sketch-bar" aria-label={`Drawing: ${tool.label}`}>
      <p class="sketch-head">
        <strong>{tool.label}</strong> <span>{stateOf(tool, corners.length)}</span>
      </p>
      {isMeasure && <MeasureResult />}
      {tool.isWalked ? <WalkPart /> : <NextCorner tool={tool} end={end} />}
      {needsHeight && height.field}
      {drawing.trouble.value && (
        <p class="field-refusal" role="alert">
          {drawing.trouble.value}
        </p>
      )}
      <div class="sketch-buttons">
        {tool.shape !== "point" || needsHeight ? (
          <button type="button" class="strong-button" onClick={end} disabled={corners.length < least && !isMeasure}>
            {isMeasure ? "Done" : "Finish"}
          </button>
        ) : null}
        {tool.shape !== "point" && (
          <button type="button" disabled={corners.length === 0} onClick={() => takeBack(store)}>
            Take back the last corner
          </button>
        )}
        {!isMeasure && (
          <button type="button" onClick={() => putAside(store)}>
            Cancel
          </button>
        )}
        {!tool.isWalked && (
          <label class="sketch-snap">
            <input
              type="checkbox"
              checked={drawing.isSnapping.value}
              onChange={(event) => {
                drawing.isSnapping.value = event.currentTarget.checked;
              }}
            />
            Snap
          </label>
        )}
      </div>
    </section>
  );
}

function stateOf({ shape, role }: Tool, corners: number): string {
  if (shape === "point") return corners === 0 ? "choose its place on the map" : "type its height";
  if (corners === 0) return role === "row" ? "place the first end post" : "place the first corner";
  return `${corners} ${corners === 1 ? "corner" : "corners"}`;
}

/** The field for a typed corner. Enter places it; Enter with nothing typed ends the drawing. */
function NextCorner({ tool, end }: { readonly tool: Tool; readonly end: () => void }) {
  const store = useStore();
  const { drawing } = store;
  const [typed, setTyped] = useState("");
  const [refusal, setRefusal] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const from = drawing.corners.value.at(-1) ?? null;
  useEffect(() => {
    // On a phone the keyboard would cover the map that is to be drawn on.
    if (!matchMedia("(pointer: coarse)").matches) input.current?.focus({ preventScroll: true });
  }, []);
  const place = (): void => {
    if (typed.trim() === "") {
      end();
      return;
    }
    const corner = typedCorner(store, typed, tool.shape === "point" ? null : from);
    setRefusal(corner.ok ? null : `“${typed}” was not understood: ${corner.reason}.`);
    if (!corner.ok) return;
    setTyped("");
    drawing.lookAt.value = corner.at;
    placeCorner(store, corner.at);
  };
  const example = store.units.value === "us" ? "120 ft at 118" : "32.4 m at 118";
  return (
    <div class="sketch-next">
      <label for={id}>{tool.shape === "point" ? "Its place" : "Next corner"}</label>
      <input
        ref={input}
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={typed}
        placeholder={from && tool.shape !== "point" ? example : "38.2914, -122.4580"}
        aria-invalid={refusal !== null}
        aria-describedby={refusal ? `${id}-refusal` : `${id}-hint`}
        onInput={(event) => {
          setTyped(event.currentTarget.value);
          setRefusal(null);
        }}
        onKeyDown={(event) => {
          if (event.key === "Enter") place();
          else if (event.key === "Backspace" && typed === "" && takeBack(store)) event.preventDefault();
        }}
      />
      <button type="button" onClick={place} disabled={typed.trim() === ""}>
        Place
      </button>
      <span class="unseen" id={`${id}-hint`}>
        Length and bearing from the last corner, such as {example}, or latitude and longitude. Enter places the corner;
        Enter on the empty field ends the drawing.
      </span>
      {refusal && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </span>
      )}
    </div>
  );
}

/** The field for a height, and how what was typed is read. */
function useHeight() {
  const store = useStore();
  const [typed, setTyped] = useState("");
  const id = useId();
  const read = (): string | null => {
    const meant = withShownUnit(typed, "length", 10, store.units.peek());
    return parseQuantity("length", meant).ok ? meant : null;
  };
  const input = useRef<HTMLInputElement>(null);
  const isPlaced = store.drawing.corners.value.length > 0;
  useEffect(() => {
    if (isPlaced) input.current?.focus({ preventScroll: true });
  }, [isPlaced]);
  const field = (
    <div class="sketch-next">
      <label for={id}>Height there</label>
      <input
        ref={input}
        id={id}
        type="text"
        autocomplete="off"
        value={typed}
        placeholder={store.units.value === "us" ? "412 ft" : "125.6 m"}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === "Enter") finish(store, read());
        }}
      />
    </div>
  );
  return { read, field };
}
