import { measurePath } from "../../core/drawing/measure.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { bearingText } from "./course-text.ts";
import { frameNear } from "./drawing-frame.ts";

/** Each leg with its bearing, the whole way, and the area when there are three corners; no trace in the project. */
export function MeasureResult() {
  const store = useStore();
  const corners = store.drawing.corners.value;
  const units = store.units.value;
  const first = corners[0];
  const frame = first ? frameNear(store, first) : null;
  if (!frame || corners.length < 2) return <p class="aside">Place corners; lengths and bearings stand here.</p>;
  const open = measurePath(frame, corners, false);
  const closed = corners.length > 2 ? measurePath(frame, corners, true) : null;
  const legs = open.sides.map((side, i) => ({ ...side, number: i + 1 }));
  const length = (value_m: number): string => formatQuantity("length", value_m, units);
  return (
    <div class="measure-result">
      <ol>
        {legs.map(({ number, length_m, bearing_deg }) => (
          <li key={number}>
            {length(length_m)} at {bearingText(bearing_deg, 1)}
          </li>
        ))}
      </ol>
      <dl class="measure-totals">
        <dt>Together</dt>
        <dd>{length(open.length_m)}</dd>
        {closed && closed.area_m2 !== null && (
          <>
            <dt>Closed</dt>
            <dd>
              {length(closed.length_m)} around, {formatQuantity("area", closed.area_m2, units)}
            </dd>
          </>
        )}
      </dl>
    </div>
  );
}
