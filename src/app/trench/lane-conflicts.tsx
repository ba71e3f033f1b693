import type { Plan } from "../../core/plan.ts";
import type { LaneConflict, Trench } from "../../core/trench/trench.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { goToPlace } from "./go-to-place.ts";

interface LaneConflictsProps {
  readonly plan: Plan;
  readonly trench: Trench;
}

const words: Readonly<Record<LaneConflict["what"], string>> = {
  post: "to its end post",
  anchor: "to its anchor",
  turning: "to turn the trencher in",
};

/** Rows that the trench passes too near, each to be gone to on the map. */
export function LaneConflicts({ plan, trench }: LaneConflictsProps) {
  const store = useStore();
  const units = store.units.value;
  const { conflicts } = trench;
  if (conflicts.length === 0) return null;
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  return (
    <section class="trench-places" aria-label="Too little room">
      <h3>Too little room</h3>
      <ul>
        {conflicts.map((conflict) => (
          <li key={`${conflict.row} ${conflict.end} ${conflict.what} ${conflict.xy.join()}`}>
            <button type="button" class="quiet-button" onClick={() => goToPlace(store, plan, conflict.xy)}>
              {told(conflict)}
            </button>
            <span>
              {length(conflict.distance_m)} {words[conflict.what]}, {length(conflict.least_m)} wanted
            </span>
          </li>
        ))}
      </ul>
    </section>
  );

  function told({ row, end }: LaneConflict): string {
    const id = plan.rows?.rows[row]?.id;
    return id === undefined ? "Beside the rows" : `Row ${id}, its ${end}`;
  }
}
