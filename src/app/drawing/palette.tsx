import { useEffect, useRef } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { takeUp } from "./sketch.ts";
import { choices } from "./tools.ts";

/** What can be drawn: choose what, and its shape where there are several. */
export function Palette() {
  const store = useStore();
  const { drawing } = store;
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => {
    if (drawing.isPaletteOpen.value) list.current?.querySelector("button")?.focus({ preventScroll: true });
  }, [drawing, drawing.isPaletteOpen.value]);
  if (!drawing.isPaletteOpen.value) return null;
  return (
    <section
      class="palette"
      id="draw-palette"
      aria-label="What to draw"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.preventDefault();
        drawing.isPaletteOpen.value = false;
        document.querySelector<HTMLElement>(".draw-buttons button")?.focus();
      }}
    >
      <ul ref={list}>
        {choices.map(({ label, hint, tools }) => (
          <li key={label}>
            {tools.length === 1 && tools[0] ? (
              <button type="button" class="palette-whole" onClick={() => tools[0] && takeUp(store, tools[0])}>
                <strong>{label}</strong> <span>{hint}</span>
              </button>
            ) : (
              <fieldset>
                <legend>
                  <strong>{label}</strong> <span>{hint}</span>
                </legend>
                <div class="palette-shapes">
                  {tools.map((tool) => (
                    <button
                      key={tool.button}
                      type="button"
                      aria-label={`${label}: ${tool.button.toLowerCase()}`}
                      onClick={() => takeUp(store, tool)}
                    >
                      {tool.button}
                    </button>
                  ))}
                </div>
              </fieldset>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
