import { useEffect, useRef, useState } from "preact/hooks";
import { meanPosition } from "../../core/drawing/walked.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import type { Position } from "./drawing-state.ts";
import { followPosition } from "./follow-position.ts";
import { placeCorner } from "./sketch.ts";

/** How long readings are gathered for one corner. */
const gather_ms = 4000;

/** Walking the outline: where the device is, how sure it is, and a button that puts a corner there. */
export function WalkPart() {
  const store = useStore();
  const { drawing } = store;
  const [trouble, setTrouble] = useState<string | null>(null);
  const [left_s, setLeft] = useState<number | null>(null);
  const readings = useRef<Position[] | null>(null);
  useEffect(
    () =>
      followPosition({
        onPosition: (position) => {
          if (!drawing.position.peek()) drawing.lookAt.value = position.at;
          drawing.position.value = position;
          readings.current?.push(position);
          setTrouble(null);
        },
        onTrouble: setTrouble,
      }),
    [drawing],
  );
  useEffect(() => {
    if (left_s === null) return;
    if (left_s > 0) {
      const timer = setTimeout(() => setLeft(left_s - 1), 1000);
      return () => clearTimeout(timer);
    }
    const mean = meanPosition(readings.current ?? []);
    readings.current = null;
    setLeft(null);
    if (mean) placeCorner(store, mean.at);
  }, [left_s, store]);
  const position = drawing.position.value;
  const put = (): void => {
    if (!position) return;
    readings.current = [position];
    setLeft(gather_ms / 1000);
  };
  const accuracy = position && formatQuantity("length", position.accuracy_m, store.units.value, 0);
  return (
    <div class="walk-part">
      <p>
        {trouble ??
          (position ? `Your position is good to about ${accuracy}.` : "Waiting for the position of this device…")}
      </p>
      <p class="aside">An outline walked with a phone is a sketch: good for planning, not for staking.</p>
      <button type="button" class="strong-button" disabled={!position || left_s !== null} onClick={put}>
        {left_s === null ? "Put a corner here" : `Stand still… ${left_s} s`}
      </button>
    </div>
  );
}
