import { useEffect, useId, useState } from "preact/hooks";
import { formatQuantity } from "../../core/units.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";

const RowPanel = lazily(async () => (await import("./side-panel.tsx")).SidePanel);
const TrenchPanel = lazily(async () => (await import("./trench-panel.tsx")).TrenchPanel);

const WaterPanel = lazily(async () => (await import("./water-panel.tsx")).WaterPanel);

const things = ["row", "trench", "water"] as const;
type Thing = (typeof things)[number];
const names = { row: "Row", trench: "Trench", water: "Water" } as const;
const panels = { row: RowPanel, trench: TrenchPanel, water: WaterPanel } as const;

/** The side view under the map, closed until it is asked for: the chosen row, or the trench while none is; or what the water does. */
export function SideView({ onOpen }: { readonly onOpen: () => void }) {
  const store = useStore();
  const [isOpen, setOpen] = useState(false);
  const [chosen, setChosen] = useState<Thing | null>(null);
  const id = useId();
  const plan = store.shownPlan.value;
  const row = plan?.rows?.rows.find((each) => each.id === store.row.value);
  const trench = plan?.trench ?? null;
  // Whoever chooses a row wants to see it, or its water.
  useEffect(() => setChosen((was) => (was === "water" ? was : null)), [row?.id]);
  const length = (length_m: number) => formatQuantity("length", length_m, store.units.value);
  const isWatered = plan?.watering?.watering != null;
  const shown = things.filter((each) => each === "row" || (each === "trench" ? trench !== null : isWatered));
  const thing = chosen !== null && shown.includes(chosen) ? chosen : row || trench === null ? "row" : "trench";
  const Panel = panels[thing];
  const rowTold = row ? `Row ${row.id}, ${length(row.length_m)}` : "no row chosen";
  const told = thing === "trench" && trench ? `Trench, ${length(trench.length_m)}` : rowTold;
  return (
    <section class="side-view" aria-label="Side view">
      <button
        type="button"
        class="side-bar"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => {
          if (!isOpen) onOpen();
          setOpen(!isOpen);
        }}
      >
        <strong>Side view</strong> <span>{told}</span>
      </button>
      <div class="side-view-panel" id={id} hidden={!isOpen}>
        {isOpen && shown.length > 1 && (
          <fieldset class="side-things">
            <legend class="unseen">What is seen from its side</legend>
            {shown.map((each) => (
              <button
                key={each}
                type="button"
                class="quiet-button"
                aria-pressed={thing === each}
                onClick={() => setChosen(each)}
              >
                {names[each]}
              </button>
            ))}
          </fieldset>
        )}
        {isOpen && <Panel />}
      </div>
    </section>
  );
}
