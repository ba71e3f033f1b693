import type { Plan } from "../../core/plan.ts";
import { rowSideSvg } from "../../core/sheets/row-side-svg.ts";
import type { SideZoom } from "../../core/sheets/side-scale.ts";
import { download, fileStem } from "../download.ts";
import { useStore } from "../store-context.ts";
import { printDrawing } from "./print-drawing.ts";

/** Takes the drawing off the page: as a file as it is shown, or on paper with the whole row. */
export function DrawingButtons({
  plan,
  row,
  zoom,
}: {
  readonly plan: Plan;
  readonly row: string;
  readonly zoom: SideZoom;
}) {
  const units = useStore().units.value;
  const save = (): void => {
    const svg = rowSideSvg(plan, row, { units, zoom });
    if (svg !== null) download(`${fileStem(plan.project.name)}-row-${fileStem(row)}.svg`, svg, "image/svg+xml");
  };
  const print = (): void => {
    const svg = rowSideSvg(plan, row, { units });
    if (svg !== null) printDrawing(`Row ${row}`, svg);
  };
  return (
    <>
      <button type="button" class="quiet-button" onClick={save}>
        Save the drawing
      </button>
      <button type="button" class="quiet-button" onClick={print}>
        Print the drawing
      </button>
    </>
  );
}
