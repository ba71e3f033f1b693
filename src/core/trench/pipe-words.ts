import { type Phrase, quantity, say } from "../finding.ts";
import { pipeSizes } from "../hydraulics/pipe-sizes.ts";
import type { PipeJoint, PipeSettings } from "../project/project.ts";

/** What one asks for; a size of one's own by its outside diameter. */
export function pipeName({ size, outside_mm }: Pick<PipeSettings, "size" | "outside_mm">): Phrase {
  const known = pipeSizes.find((each) => each.size === size);
  return known === undefined ? say`pipe ${size}, ${quantity("diameter", outside_mm)} outside` : [known.name];
}

/** How a fitting takes the pipe. */
export const socketWords: Readonly<Record<PipeJoint, string>> = {
  solvent: "sockets for solvent cement",
  gasket: "gasketed sockets",
  barbed: "compression or clamped ends",
};

/** Thread of what leaves the pipe for a row, a drain or an air valve. Common practice, no source. */
export const outletWords = "3/4 in (25 mm) female thread";
