import type { RowSide } from "../../core/sheets/row-side.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import type { SideScale } from "./side-scale.ts";

/** How many pixels wide the heights are written. */
export const heightsWidth_px = 118;
const line_px = 15;

/** The wires' heights beside the drawing, which stay in view while it is scrolled; pushed apart where they are close. */
export function Heights({
  side,
  scale,
  units,
}: {
  readonly side: RowSide;
  readonly scale: SideScale;
  readonly units: UnitSystem;
}) {
  const { y, height, ground } = scale;
  const wires = [...side.wires].sort((a, b) => a.height_m - b.height_m);
  let lowest = ground + line_px;
  const written = wires.map((wire) => {
    const at = Math.min(y(wire.height_m), lowest - line_px);
    lowest = at;
    return { ...wire, at };
  });
  return (
    <svg class="side-heights" width={heightsWidth_px} height={height} aria-hidden="true">
      {written.map(({ purpose, height_m, count, at }) => (
        <g key={`${purpose} ${height_m}`} class={`side-wire wire-${purpose}`}>
          <path d={`M${heightsWidth_px - 14} ${at}L${heightsWidth_px} ${y(height_m)}`} />
          <text x={heightsWidth_px - 17} y={at + 4.5} text-anchor="end">
            {purpose}
            {count > 1 && ` ×${count}`} {formatQuantity("length", height_m, units)}
          </text>
        </g>
      ))}
    </svg>
  );
}
