import { useStore } from "../store-context.ts";
import { CornerTable } from "./corner-table.tsx";
import type { Tool } from "./drawing-state.ts";

/** The corners of what is being drawn, to be typed over. */
export function SketchTable({ tool }: { readonly tool: Tool }) {
  const { drawing } = useStore();
  const corners = drawing.corners.value;
  if (corners.length === 0) return null;
  return (
    <section class="thing-panel" aria-label="Corners so far">
      <header>
        <h2>{tool.role === "measure" ? "Measured corners" : `${tool.label}, not finished`}</h2>
      </header>
      <CornerTable
        corners={corners}
        closed={false}
        caption="Corners so far"
        onMove={(corner, to) => {
          drawing.corners.value = corners.map((at, i) => (i === corner ? to : at));
          return "";
        }}
        onRemove={(corner) => {
          drawing.corners.value = corners.filter((_, i) => i !== corner);
        }}
      />
    </section>
  );
}
