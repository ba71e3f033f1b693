import "./draw-buttons.css";
import type { Map as MapLibreMap } from "maplibre-gl";
import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { ImageryDoor } from "../imagery/imagery-door.tsx";
import { useStore } from "../store-context.ts";
import { ReliefDoor } from "../terrain/relief-door.tsx";

interface DeskProps {
  readonly map: MapLibreMap;
}

/** The buttons that fetch the drawing tools, and the tools once they are there. */
export function DrawingDoor({ map }: DeskProps) {
  const store = useStore();
  const { drawing } = store;
  const [loaded, setLoaded] = useState<{ readonly Desk: ComponentType<DeskProps> } | null>(null);
  const [failed, setFailed] = useState(false);
  const isEmpty = (store.project.value?.document.features.length ?? 1) === 0;
  const isWanted = drawing.isAwake.value || isEmpty;
  useEffect(() => {
    if (!isWanted || loaded) return;
    import("./desk.tsx").then(setLoaded, () => setFailed(true));
  }, [isWanted, loaded]);
  const measure = (): void => {
    drawing.isAwake.value = true;
    void import("./sketch.ts").then(async ({ finish, takeUp }) => {
      const { measureTool } = await import("./tools.ts");
      if (drawing.tool.peek()?.role === "measure") finish(store);
      else takeUp(store, measureTool);
    });
  };
  return (
    <>
      <fieldset class={isEmpty ? "draw-buttons is-blank" : "draw-buttons"}>
        <legend class="unseen">Draw and measure</legend>
        <button
          type="button"
          aria-expanded={drawing.isPaletteOpen.value}
          aria-controls="draw-palette"
          onClick={() => {
            drawing.isAwake.value = true;
            drawing.isImageryOpen.value = false;
            drawing.isPaletteOpen.value = !drawing.isPaletteOpen.value;
          }}
        >
          Draw
        </button>
        <button type="button" aria-pressed={drawing.tool.value?.role === "measure"} onClick={measure}>
          Measure
        </button>
        <button
          type="button"
          aria-expanded={drawing.isImageryOpen.value}
          aria-controls="imagery-panel"
          onClick={() => {
            drawing.isPaletteOpen.value = false;
            drawing.isImageryOpen.value = !drawing.isImageryOpen.value;
          }}
        >
          Picture
        </button>
        <ReliefDoor map={map} />
      </fieldset>
      {failed && (
        <p class="draw-failed" role="alert">
          The drawing tools could not be loaded. Load the page again when the network is there.
        </p>
      )}
      <ImageryDoor map={map} />
      {loaded && <loaded.Desk map={map} />}
    </>
  );
}
