import { type Phrase, quantity, say } from "../finding.ts";
import { ratingAt, ratingOf } from "../hydraulics/pipe-rating.ts";
import { pipeSizes } from "../hydraulics/pipe-sizes.ts";
import type { Watering } from "./watering.ts";

/** What one asks for, at the start of a sentence; and what it stands with water of a temperature. */
export function pipeRating(
  { pipes }: Pick<Watering, "pipes">,
  pipe: number,
  temperature_c: number,
): readonly [name: Phrase, rated: Phrase] {
  const size = pipes[pipe]?.pipe.size ?? "";
  const known = pipeSizes.find((each) => each.size === size);
  const cold_kpa = ratingOf(size) ?? 0;
  const warm_kpa = ratingAt(size, temperature_c) ?? 0;
  const rated = say`${quantity("pressure", warm_kpa)}`;
  return [
    [known?.name ?? `Pipe ${size}`],
    warm_kpa < cold_kpa
      ? [
          ...rated,
          ...say` with water of ${quantity("temperature", temperature_c)} (${quantity("pressure", cold_kpa)} when cold)`,
        ]
      : rated,
  ];
}
