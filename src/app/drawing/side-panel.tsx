import type { DrawnPath, DrawnThing } from "../../core/drawing/drawn.ts";
import { courseBetween } from "../../core/drawing/place.ts";
import type { Project } from "../../core/project/project.ts";
import { useStore } from "../store-context.ts";
import { CellField } from "./cell-field.tsx";
import { moveCorner } from "./corner-edits.ts";
import { courseText } from "./course-text.ts";
import { frameNear } from "./drawing-frame.ts";
import { selectSide } from "./select.ts";
import { SideFields } from "./side-fields.tsx";
import { turnAlongSide } from "./thing-edits.ts";
import { typedCorner } from "./typed-corner.ts";

interface SidePanelProps {
  readonly project: Project;
  readonly thing: DrawnThing;
  readonly path: DrawnPath;
  readonly edge: number;
}

/** The selected side: its course, its setback, its taped length, and the rows along it. */
export function SidePanel({ project, thing, path, edge }: SidePanelProps) {
  const store = useStore();
  const from = path.corners[edge];
  const nextIndex = edge + 1 < path.corners.length ? edge + 1 : 0;
  const to = path.corners[nextIndex];
  const frame = from ? frameNear(store, from) : null;
  if (!from || !to || !frame) return null;
  const side = { key: thing.key, path: path.path, edge };
  const course = (typed: string): string => {
    const meant = typedCorner(store, typed, from);
    if (!meant.ok) return `“${typed}” was not understood: ${meant.reason}.`;
    return moveCorner(store, { key: thing.key, path: path.path, corner: nextIndex }, meant.at);
  };
  return (
    <section class="side-panel" aria-label={`Side ${edge + 1}`}>
      <h3>
        Side {edge + 1}{" "}
        <small>
          from corner {edge + 1} to {nextIndex + 1}
        </small>
      </h3>
      <CellField
        label="Length and bearing"
        shown={courseText(frame, from, to, store.units.value)}
        apply={course}
        isLabelled
      />
      {thing.role === "parcel" && (
        <SideFields project={project} side={side} length_m={courseBetween(frame, from, to).length_m} isLabelled />
      )}
      <p class="panel-buttons">
        {thing.role === "parcel" && (
          <button type="button" onClick={() => turnAlongSide(store, side)}>
            Rows run along this side
          </button>
        )}
        <button type="button" class="quiet-button" onClick={() => selectSide(store, null)}>
          Leave this side
        </button>
      </p>
    </section>
  );
}
