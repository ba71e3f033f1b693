import { useRef } from "preact/hooks";
import { FileInput } from "../file-input.tsx";
import { useStore } from "../store-context.ts";
import { HeightFileForm } from "./height-file-form.tsx";
import { heightReadingOf } from "./height-reading-of.ts";
import { parcelCorners } from "./parcel-corners.ts";

function isTrack({ name }: File): boolean {
  return /\.gpx$/i.test(name);
}

/** The button that opens a height file, and what becomes of the file. */
export function HeightFilePart() {
  const store = useStore();
  const input = useRef<HTMLInputElement>(null);
  const reading = heightReadingOf(store);
  const state = reading.state.value;
  const ground = {
    corners: parcelCorners(store.shownPlan.value?.project.parcels ?? []),
    units: store.units.value,
  };
  return (
    <div class="height-file">
      {(state.kind === "none" || state.kind === "taken" || state.kind === "refused") && (
        <>
          <button type="button" onClick={() => input.current?.click()}>
            Open a height file
          </button>
          <span class="aside">
            GeoTIFF, of any size; only what lies around the parcel is taken. Or a track with heights (GPX).
          </span>
        </>
      )}
      <FileInput
        field={input}
        accept=".tif,.tiff,image/tiff,.gpx,application/gpx+xml"
        take={(file) => (isTrack(file) ? reading.takeTrack(file, store.units.value) : reading.look(file, ground))}
      />
      {state.kind === "looking" && (
        <p role="status">
          Looking at {state.file.name} …{" "}
          <button type="button" class="quiet-button" onClick={reading.stop}>
            Stop
          </button>
        </p>
      )}
      {state.kind === "asked" && (
        <HeightFileForm
          key={`${state.about.file.system}`}
          file={state.file}
          about={state.about}
          onSystem={(system) => reading.look(state.file, ground, system)}
          typed={state.system ?? ""}
          onRead={(unit) => reading.read(state.file, ground, unit)}
          onCancel={reading.stop}
        />
      )}
      {state.kind === "reading" && (
        <div class="height-progress">
          <label>
            Reading {state.file.name}
            <progress value={state.share_ratio} max={1} />
          </label>
          <button type="button" onClick={reading.stop}>
            Stop
          </button>
        </div>
      )}
      <div role="status">
        {(state.kind === "taken" || state.kind === "refused") && (
          <ul class={state.kind === "refused" ? "height-told refused" : "height-told"}>
            <li>
              {state.kind === "taken"
                ? `The heights of ${state.file.name} are in the project.`
                : `${state.file.name} was not taken; the heights are as they were.`}
            </li>
            {state.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </div>
    </div>
  );
}
