import "./imagery.css";
import { signal } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { useEffect, useId, useMemo, useState } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { checkTemplate, type Imagery, within } from "./imagery.ts";
import { ImageryLayer } from "./imagery-layer.ts";
import { keepImagery, keptImagery } from "./kept-imagery.ts";

/** The person's own picture of the ground: its layer, and the panel that sets it. */
export function ImageryDesk({ map }: { readonly map: MapLibreMap }) {
  const store = useStore();
  const imagery = useMemo(() => signal(keptImagery(location.href)), []);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [layer, setLayer] = useState<ImageryLayer | null>(null);
  useEffect(() => {
    const made = new ImageryLayer(map, setTrouble);
    const show = (): void => {
      setLayer(made);
    };
    if (map.getStyle()) show();
    else map.once("style.load", show);
    return () => made.remove();
  }, [map]);
  const shown = imagery.value;
  useEffect(() => {
    store.drawing.isPictured.value = shown?.isOn ?? false;
    layer?.show(shown);
  }, [layer, shown, store]);
  if (!store.drawing.isImageryOpen.value) {
    return trouble && shown?.isOn ? (
      <p class="imagery-trouble" role="status">
        {trouble}{" "}
        <button type="button" class="quiet-button" onClick={() => setTrouble(null)}>
          Good
        </button>
      </p>
    ) : null;
  }
  const change = (next: Imagery | null): void => {
    imagery.value = next;
    setTrouble(
      keepImagery(next) ? null : "This device does not let the page keep it: it holds until the page is closed.",
    );
  };
  return (
    <section class="imagery-panel" id="imagery-panel" aria-label="Picture of the ground">
      <h2>Picture of the ground</h2>
      <p class="aside">
        Tiles that you bring, from a server you may use. The address stays on this device and is no part of the project.
        While it is on, the page asks that server for pictures of the places you look at.
      </p>
      {shown && <Shown imagery={shown} change={change} />}
      <Address key={shown?.template ?? ""} imagery={shown} change={change} />
      {trouble && (
        <p class="aside" role="status">
          {trouble}
        </p>
      )}
      <button
        type="button"
        class="quiet-button"
        onClick={() => {
          store.drawing.isImageryOpen.value = false;
        }}
      >
        Close
      </button>
    </section>
  );
}

interface PartProps<T> {
  readonly imagery: T;
  readonly change: (next: Imagery | null) => void;
}

function Shown({ imagery, change }: PartProps<Imagery>) {
  const id = useId();
  return (
    <div class="imagery-shown">
      <label>
        <input
          type="checkbox"
          checked={imagery.isOn}
          onChange={(event) => change({ ...imagery, isOn: event.currentTarget.checked })}
        />
        Show it
      </label>
      <label for={id}>Strength</label>
      <input
        id={id}
        type="range"
        min="10"
        max="100"
        step="5"
        value={Math.round(imagery.opacity * 100)}
        aria-valuetext={`${Math.round(imagery.opacity * 100)} %`}
        onInput={(event) => change({ ...imagery, opacity: Number(event.currentTarget.value) / 100 })}
      />
      <button type="button" onClick={() => change(null)}>
        Remove it
      </button>
    </div>
  );
}

function Address({ imagery, change }: PartProps<Imagery | null>) {
  const [template, setTemplate] = useState(imagery?.template ?? "");
  const [attribution, setAttribution] = useState(imagery?.attribution ?? "");
  const [maxZoom, setMaxZoom] = useState(String(imagery?.maxZoom ?? 19));
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const use = (): void => {
    const checked = checkTemplate(template, location.href);
    setRefusal(checked.ok ? null : checked.sentence);
    if (!checked.ok) return;
    const opacity = imagery?.opacity ?? 1;
    const zoom = within(Number(maxZoom), 1, 24, 19);
    change({ template: checked.template, attribution: attribution.trim(), maxZoom: zoom, opacity, isOn: true });
  };
  return (
    <form
      class="imagery-address"
      onSubmit={(event) => {
        event.preventDefault();
        use();
      }}
    >
      <label for={`${id}-template`}>Address of the tiles</label>
      <input
        id={`${id}-template`}
        type="text"
        autocomplete="off"
        spellcheck={false}
        placeholder="https://…/{z}/{x}/{y}.png"
        value={template}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : `${id}-refusal`}
        onInput={(event) => setTemplate(event.currentTarget.value)}
      />
      {refusal && (
        <p class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </p>
      )}
      <label for={`${id}-attribution`}>Whose picture it is, shown on the map</label>
      <input
        id={`${id}-attribution`}
        type="text"
        autocomplete="off"
        value={attribution}
        onInput={(event) => setAttribution(event.currentTarget.value)}
      />
      <label for={`${id}-zoom`}>Deepest zoom it has</label>
      <input
        id={`${id}-zoom`}
        type="number"
        min="1"
        max="24"
        value={maxZoom}
        onInput={(event) => setMaxZoom(event.currentTarget.value)}
      />
      <button type="submit" class="strong-button" disabled={template.trim() === ""}>
        {imagery ? "Use this address" : "Show the picture"}
      </button>
    </form>
  );
}
