import type { BlockTrellis } from "../../core/trellis/trellis.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "./figure-list.tsx";

/** What follows from how the ends are held: angles and lengths of tie-back or brace, how deep the end post stands, concrete. */
export function EndFigures({ structure: { end, endPost, concreteBags } }: { readonly structure: BlockTrellis }) {
  const units = useStore().units.value;
  const length = (name: string, value_m: number, how?: string): FigureLine => ({
    name,
    value: formatQuantity("length", value_m, units),
    account: null,
    ...(how !== undefined && { how }),
  });
  const angle = (name: string, value_deg: number): FigureLine => ({
    name,
    value: formatQuantity("angle", value_deg, units, 0),
    how: "from the ground",
    account: null,
  });
  const { tie, brace } = end;
  return (
    <FigureList
      lines={[
        ...(tie === null ? [] : [angle("Tie-back", tie.angle_deg), length("Tie-back, one strand", tie.length_m)]),
        ...(brace === null
          ? []
          : [
              length(
                end.kind === "h-brace" ? "Diagonal wire" : "Strut",
                brace.diagonal_m,
                end.kind === "h-brace" ? "there; it goes there and back" : "end post to its foot",
              ),
              angle(end.kind === "h-brace" ? "Diagonal wire, angle" : "Strut, angle", brace.angle_deg),
            ]),
        length("End post in the ground", endPost.depth_m, "straight down"),
        ...(concreteBags === 0
          ? []
          : [{ name: "Bags of mix", how: "for one end post", value: String(concreteBags), account: null }]),
      ]}
    />
  );
}
