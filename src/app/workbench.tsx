import { useEffect, useRef, useState } from "preact/hooks";
import { ThingPanel } from "./drawing/lazy-parts.tsx";
import { KeepingBars } from "./keeping/keeping-bars.tsx";
import { lazily } from "./lazily.tsx";
import { MapPane } from "./map/map-pane.tsx";
import { RefusalNote } from "./refusal-note.tsx";
import { SheetGrip, type SheetStop } from "./sheet-grip.tsx";
import { SideView } from "./side-view/side-view.tsx";
import { useStore } from "./store-context.ts";
import { NotesPanel } from "./strip/notes-panel.tsx";
import { Strip } from "./strip/strip.tsx";
import { toldFindings } from "./strip/told-findings.ts";
import { TopBar } from "./top-bar.tsx";

const AccountPopover = lazily(async () => (await import("./figure/account-popover.tsx")).AccountPopover);

/** The map with the steps beside it, the side view under it, and the list of notes when it is asked for. */
export function Workbench() {
  const store = useStore();
  const [stop, setStop] = useState<SheetStop>("half");
  const [held_px, setHeld] = useState<number | null>(null);
  const [areNotesOpen, setNotesOpen] = useState(false);
  const column = useRef<HTMLDivElement>(null);
  const opened = store.opened.value;

  // A file that can not be planned says why without being asked.
  useEffect(() => {
    const findings = toldFindings(store.plan.peek());
    setNotesOpen(findings.some(({ severity }) => severity === "error"));
  }, [store, opened]);

  // On a phone the map is to be drawn on, so the steps make room.
  const isDrawing = store.drawing.tool.value !== null || store.drawing.isPaletteOpen.value;
  useEffect(() => setStop(isDrawing ? "low" : "half"), [isDrawing]);

  const closeNotes = (): void => {
    setNotesOpen(false);
    document.querySelector<HTMLElement>(".notes-button")?.focus();
  };
  const toggleNotes = (): void => {
    setNotesOpen(!areNotesOpen);
    // Between the list and the map that shows its places a phone has room for both.
    setStop("half");
  };
  return (
    <div
      class={`workbench sheet-${stop}${held_px === null ? "" : " sheet-held"}`}
      style={held_px === null ? {} : { "--steps-height": `${Math.round(held_px)}px` }}
    >
      <a class="skip-link" href="#steps">
        Skip to the steps
      </a>
      <div class="workbench-top">
        <TopBar areNotesOpen={areNotesOpen} onNotes={toggleNotes} />
        <KeepingBars />
      </div>
      <main>
        <div class="map-column" ref={column}>
          <section class="map-section" aria-label="Map of the plan">
            <MapPane />
            <RefusalNote />
          </section>
          <SideView onOpen={() => setStop("low")} />
        </div>
        <section class="steps" id="steps" tabIndex={-1} aria-label="Steps">
          <SheetGrip stop={stop} onStop={setStop} onHeld={setHeld} />
          <div class="steps-scroll">
            <ThingPanel />
            <Strip />
          </div>
        </section>
        {areNotesOpen && <NotesPanel onClose={closeNotes} />}
        <AccountPopover />
      </main>
    </div>
  );
}
