import "./panel.css";
import { drawnThings, thingLabel } from "../../core/drawing/drawn.ts";
import { BringInDoor } from "../bring-in/bring-in-door.tsx";
import { useStore } from "../store-context.ts";
import { select } from "./select.ts";

/** Every drawn thing by its name, and the ways to bring in more; pressed, a thing is selected on the map. */
export function DrawnList() {
  return (
    <>
      <Things />
      <BringInDoor />
    </>
  );
}

function Things() {
  const store = useStore();
  const { drawing } = store;
  const project = store.shownPlan.value?.project;
  const things = project ? drawnThings(project).filter(({ role }) => role !== "edge") : [];
  if (things.length === 0) return <p class="aside">Nothing is drawn yet: press Draw on the map.</p>;
  return (
    <ul class="drawn-list">
      {things.map((thing) => {
        const isSelected = drawing.selected.value === thing.key;
        return (
          <li key={thing.key}>
            <button
              type="button"
              aria-pressed={isSelected}
              onClick={() => select(store, isSelected ? null : thing.key)}
            >
              {thingLabel(thing)}
              {thing.properties.outline === "walked" && <small> walked: a sketch</small>}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
