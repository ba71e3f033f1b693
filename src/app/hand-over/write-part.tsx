import { useId } from "preact/hooks";
import type { HandOverChoice } from "../../core/exchange/choice.ts";
import { formatNamed } from "../../core/exchange/formats.ts";
import { useStore } from "../store-context.ts";
import { Note } from "../strip/notes.tsx";
import { bytesText } from "./bytes-text.ts";
import { handOverWorkOf, type WorkState } from "./hand-over-work.ts";
import type { Preview } from "./use-preview.ts";

interface WritePartProps {
  readonly choice: HandOverChoice;
  readonly preview: Preview;
  /** Why nothing can leave, in words; null when it can. */
  readonly hindrance: string | null;
}

/** The button that writes the files, how far it is, and a way to stop. */
export function WritePart({ choice, preview, hindrance }: WritePartProps) {
  const work = handOverWorkOf(useStore());
  const state = work.state.value;
  const isBusy = state.kind === "waiting" || state.kind === "writing";
  const files = preview.handed?.files ?? [];
  const told = useId();
  const words =
    files.length > 1
      ? `Save ${files.length} files`
      : files[0]
        ? `Save ${files[0].name}`
        : `Save as ${formatNamed(choice.as).word}`;
  return (
    <div class="hand-over-write">
      {isBusy ? (
        <div class="hand-over-progress">
          <div>
            <p id={told}>{busyText(state)}</p>
            <Bar state={state} labelledBy={told} />
          </div>
          <button type="button" onClick={work.stop}>
            Stop
          </button>
        </div>
      ) : (
        <button
          type="button"
          class="strong-button"
          disabled={hindrance !== null}
          onClick={() => void work.start(choice)}
        >
          {words}
        </button>
      )}
      {hindrance !== null && !isBusy && <p class="aside">{hindrance}</p>}
      <p class="hand-over-told" role="status">
        {endText(state)}
      </p>
      {state.kind === "refused" && (
        <ul class="notes">
          {state.findings.map((finding) => (
            <Note key={finding.code} finding={finding} />
          ))}
        </ul>
      )}
    </div>
  );
}

/** Files done of all; no measure within a single one. */
function Bar({ state, labelledBy }: { readonly state: WorkState; readonly labelledBy: string }) {
  const progress = state.kind === "writing" ? state.progress : null;
  return progress !== null && progress.files > 1 ? (
    <progress aria-labelledby={labelledBy} value={progress.number - 1} max={progress.files} />
  ) : (
    <progress aria-labelledby={labelledBy} />
  );
}

function busyText(state: WorkState): string {
  if (state.kind === "waiting") return `Waiting for ${state.parts.join(", ")} to be worked out`;
  if (state.kind !== "writing" || state.progress === null) return "Names are given …";
  const { file, number, files, bytes } = state.progress;
  return `${file}${files > 1 ? `, file ${number} of ${files}` : ""}: ${bytesText(bytes)}`;
}

function endText(state: WorkState): string {
  switch (state.kind) {
    case "done":
      return `${state.name} is saved, ${bytesText(state.bytes)}${state.files > 1 ? `, ${state.files} files in it` : ""}.`;
    case "stopped":
      return "Stopped: no file was saved.";
    case "refused":
      return "Nothing was saved.";
    case "failed":
      return `Nothing was saved: ${state.reason}. This is a mistake of the program, not of yours.`;
    case "none":
    case "waiting":
    case "writing":
      return "";
  }
  return state satisfies never;
}
