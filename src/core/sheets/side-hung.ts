import type { RowSide } from "./row-side.ts";
import { groundAt } from "./side-ground.ts";
import type { SideScale } from "./side-scale.ts";
import { type SideWire, sagAt } from "./side-wires.ts";
import { px, svgTag } from "./svg-text.ts";

/** A parabola in every bay, its middle as far down as the wire sags there, as often as is told. */
export function hungWire(wire: SideWire, side: RowSide, { x, y }: SideScale): string {
  const { purpose, count, supports_m, sags_m } = wire;
  const held = supports_m.map((station_m) => ({ station_m, height_m: heldHeight_m(side, wire, station_m) }));
  const curve = held
    .map((to, i) => {
      const from = held[i - 1];
      if (from === undefined) return `M${px(x(to.station_m))} ${px(y(to.height_m))}`;
      const sag_m = Number(sags_m[i - 1]) * side.sagFactor;
      // The control point of a parabola lies twice as far down as its middle.
      const [midX, midY] = [(from.station_m + to.station_m) / 2, (from.height_m + to.height_m) / 2 - 2 * sag_m];
      return `Q${px(x(midX))} ${px(y(midY))} ${px(x(to.station_m))} ${px(y(to.height_m))}`;
    })
    .join("");
  const single = svgTag("path", { d: curve });
  const pair = count > 1 ? svgTag("path", { d: curve, transform: "translate(0 2.5)" }) : "";
  return svgTag("g", { class: `side-wire wire-${purpose}`, "data-wire": purpose }, single + pair);
}

/** Height of the hose over the lowest ground: it hangs on the drip wire and goes down with it, or lies on the ground. */
export function hoseHeight_m(side: RowSide, station_m: number): number {
  const height_m = side.hose?.height_m ?? 0;
  const wire = side.wires.find((each) => each.purpose === "drip" && each.height_m === height_m);
  return wire === undefined ? groundAt(side.ground, station_m) + height_m : wireHeight_m(side, wire, station_m);
}

/** Height of a wire over the lowest ground: straight from support to support, less its sag as it is drawn. */
function wireHeight_m(side: RowSide, wire: SideWire, station_m: number): number {
  const i = wire.supports_m.findIndex((each) => each > station_m);
  const [from_m, to_m] = [wire.supports_m[i - 1], wire.supports_m[i]];
  if (from_m === undefined || to_m === undefined) return heldHeight_m(side, wire, station_m);
  const [before_m, after_m] = [heldHeight_m(side, wire, from_m), heldHeight_m(side, wire, to_m)];
  const share = (station_m - from_m) / (to_m - from_m);
  return before_m + share * (after_m - before_m) - sagAt(wire, station_m) * side.sagFactor;
}

/** Height of a wire at a support, over the lowest ground; a leaning post stands where its foot is. */
function heldHeight_m(side: RowSide, { height_m }: SideWire, support_m: number): number {
  return groundAt(side.ground, Math.min(side.length_m, Math.max(0, support_m))) + height_m;
}

/** The hose is looked at so often that it bends with its wire and the ground. */
const hoseStep_m = 0.5;

/** The hose along its row, just under the wire it hangs on. */
export function hose(side: RowSide, { x, y }: SideScale): string {
  if (side.hose === null) return "";
  const { from_m, to_m } = side.hose;
  const steps = Math.max(1, Math.ceil(Math.abs(to_m - from_m) / hoseStep_m));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const station_m = from_m + (i / steps) * (to_m - from_m);
    const high = y(hoseHeight_m(side, station_m));
    return `${px(x(station_m))} ${px(high + 3)}`;
  });
  return svgTag("path", { class: "side-hose", d: `M${points.join("L")}` });
}
