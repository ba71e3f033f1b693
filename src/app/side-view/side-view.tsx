import { useId, useState } from "preact/hooks";
import { formatQuantity } from "../../core/units.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";

const Panel = lazily(async () => (await import("./side-panel.tsx")).SidePanel);

/** The side view under the map, closed until it is asked for. */
export function SideView({ onOpen }: { readonly onOpen: () => void }) {
  const store = useStore();
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const row = store.shownPlan.value?.rows?.rows.find((each) => each.id === store.row.value);
  const told = row ? `Row ${row.id}, ${formatQuantity("length", row.length_m, store.units.value)}` : "no row chosen";
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
        {isOpen && <Panel />}
      </div>
    </section>
  );
}
