import {
  areaWithinAccount,
  sideBearingAccount,
  sideLengthAccount,
  wayLengthAccount,
} from "../../core/drawing/accounts.ts";
import { measurePath } from "../../core/drawing/measure.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
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
  if (!first || !frame || corners.length < 2)
    return <p class="aside">Place corners; lengths and bearings stand here.</p>;
  const open = measurePath(frame, corners, false);
  const closed = corners.length > 2 ? measurePath(frame, corners, true) : null;
  const legs = open.sides.map((side, i) => {
    const from = corners[i] ?? first;
    return { ...side, number: i + 1, from, to: corners[i + 1] ?? from };
  });
  const length = (value_m: number): string => formatQuantity("length", value_m, units);
  return (
    <div class="measure-result">
      <ol>
        {legs.map(({ number, length_m, bearing_deg, from, to }) => (
          <li key={number}>
            <Figure
              value={length(length_m)}
              label={`side ${number}`}
              account={() => sideLengthAccount(frame, from, to)}
            />{" "}
            at{" "}
            <Figure
              value={bearingText(bearing_deg, 1)}
              label={`true bearing of side ${number}`}
              account={() => sideBearingAccount(frame, from, to)}
            />
          </li>
        ))}
      </ol>
      <dl class="measure-totals">
        <dt>Together</dt>
        <dd>
          <Figure
            value={length(open.length_m)}
            label="the whole way"
            account={() => wayLengthAccount(frame, corners, false)}
          />
        </dd>
        {closed && closed.area_m2 !== null && (
          <>
            <dt>Closed</dt>
            <dd>
              <Figure
                value={length(closed.length_m)}
                label="once around"
                account={() => wayLengthAccount(frame, corners, true)}
              />{" "}
              around,{" "}
              <Figure
                value={formatQuantity("area", closed.area_m2, units)}
                label="area within"
                account={() => areaWithinAccount(frame, corners)}
              />
            </dd>
          </>
        )}
      </dl>
    </div>
  );
}
