import type { Plan } from "../../core/plan.ts";
import { lowPointAccount } from "../../core/trench/fittings-account.ts";
import type { ProfilePoint, Trench } from "../../core/trench/trench.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { goToPlace } from "./go-to-place.ts";

interface LowPointsProps {
  readonly plan: Plan;
  readonly trench: Trench;
}

/** Where water gathers, each to be gone to on the map; or why that is not known. */
export function LowPoints({ plan, trench }: LowPointsProps) {
  const store = useStore();
  const units = store.units.value;
  const { lows, branches, groundLength_m } = trench;
  return (
    <section class="trench-places" aria-label="Low points">
      <h3>Low points</h3>
      {lows.length === 0 && (
        <p class="aside">
          {groundLength_m === null || plan.ground?.elevation.kind === "flat"
            ? "Not known: there are no heights for all of the trench. Bring a height file or spot heights in the Ground step."
            : "None: the pipe drains to its ends."}
        </p>
      )}
      {lows.length > 0 && <p class="aside">Water stands here while the trench is open, and in the pipe in winter.</p>}
      <ul>
        {lows.map((low) => (
          <li key={`${low.branch} ${low.station_m}`}>
            <button type="button" class="quiet-button" onClick={() => goToPlace(store, plan, low.xy)}>
              {placeText(low)}
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
    </section>
  );

  function placeText({ branch, station_m }: ProfilePoint): string {
    const name = branches[branch]?.name ?? "main";
    const line = name === "main" ? "Main line" : `Branch ${name}`;
    return `${line}, ${formatQuantity("length", station_m, units)} along`;
  }
}
