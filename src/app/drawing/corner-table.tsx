import { useState } from "preact/hooks";
import { formatPlace } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import { useStore } from "../store-context.ts";
import { CellField } from "./cell-field.tsx";
import { courseText } from "./course-text.ts";
import { frameNear } from "./drawing-frame.ts";
import { typedCorner } from "./typed-corner.ts";

interface CornerTableProps {
  readonly corners: readonly LonLat[];
  readonly closed: boolean;
  /** Names the table: "Parcel 1, hole 2". */
  readonly caption: string;
  /** Moves a corner; a sentence when it is refused, else an empty text. */
  readonly onMove: (corner: number, to: LonLat) => string;
  /** Puts a corner into the middle of the side after a corner; left out where there is none. */
  readonly onInsert?: (side: number, from: LonLat, to: LonLat) => void;
  readonly onRemove?: (corner: number) => void;
}

const pageSize = 60;

/** Every corner as latitude and longitude, and every side as length and bearing to the next: both can be typed. */
export function CornerTable({ corners, closed, caption, onMove, onInsert, onRemove }: CornerTableProps) {
  const store = useStore();
  const [page, setPage] = useState(0);
  const units = store.units.value;
  const first = corners[0];
  const frame = first ? frameNear(store, first) : null;
  const from = Math.min(page * pageSize, Math.max(0, corners.length - 1));
  const rows = corners.slice(from, from + pageSize).map((at, k) => ({ at, index: from + k }));
  const place = (index: number, typed: string): string => {
    const meant = typedCorner(store, typed, null);
    return meant.ok ? onMove(index, meant.at) : `“${typed}” was not understood: ${meant.reason}.`;
  };
  const course = (index: number, start: LonLat, typed: string): string => {
    const meant = typedCorner(store, typed, start);
    return meant.ok ? onMove(index, meant.at) : `“${typed}” was not understood: ${meant.reason}.`;
  };
  return (
    <>
      <table class="corner-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">Place; side to the next</th>
            <th scope="col">
              <span class="unseen">Put in, take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ at, index }) => {
            const next = corners[index + 1] ?? (closed && corners.length > 2 ? corners[0] : undefined);
            const nextIndex = index + 1 < corners.length ? index + 1 : 0;
            const number = index + 1;
            return (
              <tr key={number}>
                <th scope="row">{number}</th>
                <td>
                  <CellField
                    label={`Corner ${number}, latitude and longitude`}
                    shown={formatPlace(at)}
                    apply={(typed) => place(index, typed)}
                  />
                  {next && frame && (
                    <CellField
                      label={`Side from corner ${number} to ${nextIndex + 1}, length and bearing`}
                      shown={courseText(frame, at, next, units)}
                      apply={(typed) => course(nextIndex, at, typed)}
                    />
                  )}
                </td>
                <td class="corner-buttons">
                  {onInsert && next && (
                    <button
                      type="button"
                      class="quiet-button"
                      aria-label={`Put a corner in after corner ${number}`}
                      title="Put a corner in here"
                      onClick={() => onInsert(index, at, next)}
                    >
                      +
                    </button>
                  )}
                  {onRemove && (
                    <button
                      type="button"
                      class="quiet-button"
                      aria-label={`Take corner ${number} out`}
                      title="Take this corner out"
                      onClick={() => onRemove(index)}
                    >
                      −
                    </button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {corners.length > pageSize && (
        <p class="corner-pages">
          <button type="button" class="quiet-button" disabled={page === 0} onClick={() => setPage(page - 1)}>
            Corners before
          </button>
          <span>
            {from + 1} to {Math.min(corners.length, from + pageSize)} of {corners.length}
          </span>
          <button
            type="button"
            class="quiet-button"
            disabled={from + pageSize >= corners.length}
            onClick={() => setPage(page + 1)}
          >
            Corners after
          </button>
        </p>
      )}
    </>
  );
}
