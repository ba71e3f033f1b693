import type { FlowClass } from "../../core/drip/flow-pieces.ts";
import { colours } from "../../plugin/colours.ts";

/** How a class of flow is drawn: told apart by its line as well as by its colour. */
export interface FlowStyle {
  readonly says: string;
  readonly colour: string;
  readonly width_px: number;
  /** In widths of the line. */
  readonly dashes: readonly [drawn: number, left: number] | null;
  /** Between the two lines of a double one; 0: a single one. */
  readonly gap_px: number;
}

const style = (
  says: string,
  colour: string,
  width_px: number,
  dashes: FlowStyle["dashes"] = null,
  gap_px = 0,
): FlowStyle => ({ says, colour, width_px, dashes, gap_px });

/** From too little to too much. */
export const flowStyles: Readonly<Record<FlowClass, FlowStyle>> = {
  none: style("no water", colours.error, 4.5, [0.5, 1.5]),
  "far-under": style("more than 10 % less", colours.clay, 3.5, [1, 1]),
  under: style("5 to 10 % less", colours.water, 2.5, [3, 1.5]),
  even: style("within 5 %", colours.water, 2.5),
  over: style("5 to 10 % more", colours.water, 1.2, null, 2),
  "far-over": style("more than 10 % more", colours.amber, 2, null, 3),
};
