import { fittingParts } from "./fitting-parts.ts";
import { jointParts } from "./joint-parts.ts";
import { pipeParts } from "./pipe-parts.ts";
import { rowParts } from "./row-parts.ts";
import type { TrenchPart } from "./trench.ts";
import type { TrenchLine } from "./trench-line.ts";

/** Everything that goes into the trench, in the order it is laid; what is not needed is left out. */
export function trenchParts(line: TrenchLine): readonly TrenchPart[] {
  return [...pipeParts(line), ...fittingParts(line), ...rowParts(line), ...jointParts(line)].filter(
    ({ quantity }) => quantity > 0,
  );
}
