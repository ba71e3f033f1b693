import type { TrenchSettings, TrenchTool } from "../project/project.ts";

/**
 * What a tool digs at least, and what it takes beside the pipe to work in, m. Hand work in small pipe: outside diameter and 0.3 m (calculation
 * handbook, section 7); a trencher's pipe is joined beside the trench and let down. Common practice, no source.
 */
export const toolWidths: Readonly<Record<TrenchTool, { readonly least_m: number; readonly beside_m: number }>> = {
  hand: { least_m: 0.3, beside_m: 0.3 },
  trencher: { least_m: 0.15, beside_m: 0.05 },
  excavator: { least_m: 0.3, beside_m: 0.3 },
};

/** Width at the bottom, m: as set, else what the tool digs, and never less than the pipe and the room beside it. */
export function trenchWidth_m({ width_m, tool, pipe }: Pick<TrenchSettings, "width_m" | "tool" | "pipe">): number {
  const { least_m, beside_m } = toolWidths[tool];
  return width_m ?? Math.max(least_m, pipe.outside_mm / 1000 + beside_m);
}
