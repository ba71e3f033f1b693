import { useState } from "preact/hooks";
import { DropTarget } from "./drop-target.tsx";
import { MapPane } from "./map/map-pane.tsx";
import { OpenChoices } from "./open-choices.tsx";
import { RefusalNote } from "./refusal-note.tsx";
import { useStore } from "./store-context.ts";
import { Strip } from "./strip/strip.tsx";
import { TopBar } from "./top-bar.tsx";
import { words } from "./words.ts";

/** The whole page: the first screen, or the map with the steps beside it. */
export function Page() {
  const store = useStore();
  return (
    <>
      {store.opened.value > 0 ? <Workbench /> : <Welcome />}
      <DropTarget />
    </>
  );
}

function Welcome() {
  return (
    <main class="welcome">
      <div class="welcome-sheet">
        <h1>{words.title}</h1>
        <p class="claim">{words.claim}</p>
        <p>{words.welcome}</p>
        <RefusalNote />
        <OpenChoices heading="h2" />
      </div>
    </main>
  );
}

function Workbench() {
  const [isTall, setTall] = useState(false);
  return (
    <div class={isTall ? "workbench sheet-is-tall" : "workbench"}>
      <TopBar />
      <main>
        <section class="map-section" aria-label="Map of the plan">
          <MapPane />
          <RefusalNote />
        </section>
        <section class="steps" aria-label="Steps">
          <button type="button" class="sheet-grip" aria-expanded={isTall} onClick={() => setTall(!isTall)}>
            {isTall ? "More map" : "More room for the steps"}
          </button>
          <Strip />
        </section>
      </main>
    </div>
  );
}
