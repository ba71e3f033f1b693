import type { AboutPart } from "../../about.ts";
import type { HandOverJob } from "../../format.ts";
import { type Box, metresTo } from "./box.ts";
import { dxfText } from "./dxf-text.ts";
import { extendedData } from "./feature-data.ts";
import { dxfNumber, groups } from "./group.ts";
import { aboutLayerName } from "./opening.ts";

/**
 * What the drawing is, and what its numbers count and lie in, as lines of TEXT under it. The first of them says system and unit as data
 * too, so that the drawing comes back to its place without a question.
 */
export function aboutDrawn({ system }: HandOverJob, about: readonly AboutPart[], { least }: Box): string {
  const height = textHeight_m * metresTo(system.unit);
  const lines = about.flatMap(({ head, lines }) => [head, ...lines.map((line) => `  ${line}`)]);
  const stated = extendedData([
    ["system", system.code === null ? system.definition : `EPSG:${system.code}`],
    ["unit", system.unit],
  ]);
  return lines
    .map((line, i) => {
      const y = least[1] - (i + 3) * 1.8 * height;
      return (
        groups([0, "TEXT"], [8, aboutLayerName], [10, dxfNumber(least[0])], [20, dxfNumber(y)]) +
        groups([40, dxfNumber(height)], [1, cut(dxfText(line))]) +
        (i === 0 ? stated : extendedData([["about", true]]))
      );
    })
    .join("");
}

const textHeight_m = 1;

/** R12 takes 255 bytes a string. */
function cut(line: string): string {
  const most = 250;
  return line.length <= most ? line : `${line.slice(0, most - 3).replace(/\\[^\\]{0,6}$/, "")}...`;
}
