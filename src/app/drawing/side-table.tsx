import type { DrawnPath, DrawnThing } from "../../core/drawing/drawn.ts";
import { measurePath } from "../../core/drawing/measure.ts";
import type { Project } from "../../core/project/project.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { frameNear } from "./drawing-frame.ts";
import { selectSide } from "./select.ts";
import { SideFields } from "./side-fields.tsx";

interface SideTableProps {
  readonly project: Project;
  readonly thing: DrawnThing;
  readonly path: DrawnPath;
}

const mostSides = 60;

/** Setback and taped length of every side of an outline. */
export function SideTable({ project, thing, path }: SideTableProps) {
  const store = useStore();
  const units = store.units.value;
  const first = path.corners[0];
  const frame = first ? frameNear(store, first) : null;
  if (!frame) return null;
  const sides = measurePath(frame, path.corners, path.closed).sides.slice(0, mostSides);
  const chosen = store.drawing.side.value;
  const rows = sides.map((side, edge) => ({ ...side, edge }));
  return (
    <details class="more">
      <summary>Setback and taped length of each side</summary>
      <table class="corner-table">
        <thead>
          <tr>
            <th scope="col">Side</th>
            <th scope="col">Setback; length by tape</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ edge, length_m }) => (
            <tr key={edge}>
              <th scope="row">
                <button
                  type="button"
                  class="quiet-button"
                  aria-pressed={chosen?.path === path.path && chosen.edge === edge}
                  aria-label={`Select side ${edge + 1}, ${formatQuantity("length", length_m, units)}`}
                  onClick={() => selectSide(store, { path: path.path, edge })}
                >
                  {edge + 1}
                </button>
              </th>
              <td>
                <SideFields
                  project={project}
                  side={{ key: thing.key, path: path.path, edge }}
                  length_m={length_m}
                  isLabelled={false}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {path.corners.length > mostSides && (
        <p class="aside">The first {mostSides} sides; select any other on the map.</p>
      )}
    </details>
  );
}
