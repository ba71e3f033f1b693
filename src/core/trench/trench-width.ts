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

/** Earth between pipes that lie side by side, so that it can be tamped. Common practice, no source. */
export const betweenPipes_m = 0.05;

/** What pipes take side by side, m. */
export function abreast_m(outside_mm: readonly number[]): number {
  const pipes_m = outside_mm.reduce((sum_m, each_mm) => sum_m + each_mm / 1000, 0);
  return pipes_m + betweenPipes_m * Math.max(0, outside_mm.length - 1);
}

/**
 * Width at the bottom, m: as set, else what the tool digs, and never less than the pipes where they take most room and the room beside them; one
 * width for the whole trench, as it is dug with one chain or bucket.
 */
export function trenchWidth_m(
  { width_m, tool, pipe }: Pick<TrenchSettings, "width_m" | "tool" | "pipe">,
  abreast_mm: readonly number[] = [pipe.outside_mm],
): number {
  const { least_m, beside_m } = toolWidths[tool];
  return width_m ?? Math.max(least_m, abreast_m(abreast_mm) + beside_m);
}
