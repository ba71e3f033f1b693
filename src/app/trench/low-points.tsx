import { batch } from "@preact/signals";
import type { Plan } from "../../core/plan.ts";
import { planePoint } from "../../core/plane/coordinate.ts";
import { lowPointAccount } from "../../core/trench/accounts.ts";
import type { ProfilePoint, Trench } from "../../core/trench/trench.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { count } from "../strip/count.ts";

interface LowPointsProps {
  readonly plan: Plan;
  readonly trench: Trench;
}

/** Where water gathers, each to be gone to on the map; and whether the ground is known well enough to say. */
export function LowPoints({ plan, trench }: LowPointsProps) {
  const store = useStore();
  const units = store.units.value;
  const { lows, branches, groundLength_m } = trench;
  const go = ({ branch, station_m, xy }: ProfilePoint): void => {
    const at = plan.ground?.frame.toLonLat(planePoint(xy[0], xy[1])) ?? null;
    batch(() => {
      store.trenchPlace.value = { branch, station_m };
      store.drawing.isAwake.value = true;
      store.drawing.lookAt.value = at;
    });
  };
  return (
    <section class="low-points" aria-label="Low points">
      <h3>Low points</h3>
      {lows.length === 0 && (
        <p class="aside">
          {groundLength_m === null
            ? "Not known: the plan has no heights for all of the trench. Bring a height file or spot heights in the Ground step."
            : "None: the pipe drains to its ends."}
        </p>
      )}
      <ul>
        {lows.map((low) => (
          <li key={`${low.branch} ${low.station_m}`}>
            <button type="button" class="quiet-button" onClick={() => go(low)}>
              {branches[low.branch]?.name ?? ""} line, {formatQuantity("length", low.station_m, units)} along
            </button>
            <span>
              <Figure
                value={formatQuantity("length", low.by_m, units)}
                label="below its lower shoulder"
                account={() => lowPointAccount(low, plan.project.trench)}
              />{" "}
              deep{low.isFitted ? ", drained" : ""}
            </span>
          </li>
        ))}
      </ul>
      {lows.length > 0 && (
        <p class="aside">
          {count(lows.filter(({ isFitted }) => isFitted).length, "drain")} among the fittings; water stands in the open
          trench at all of them.
        </p>
      )}
    </section>
  );
}
