import type { LateralNeed } from "./watering.ts";
import type { LateralsJob, WateringJob } from "./watering-job.ts";

/** Laterals that stay in one set: the pieces of a row line. */
export interface SetUnit {
  readonly laterals: readonly number[];
  readonly flow_lps: number;
  /** Free units next to each other are only put together while this is equal. */
  readonly border: number;
  /** Set that the person put it in, from 1; 0: any. */
  readonly pin: number;
}

/**
 * The laterals that a trench gets to, in plan order, as what sets are made of: all pieces of a line together, unless they alone take more than
 * `most_lps`.
 */
export function setUnits(
  { laterals, sets, blocks }: Pick<WateringJob, "laterals" | "sets" | "blocks">,
  needs: readonly Pick<LateralNeed, "flow_lps">[],
  most_lps: number,
): readonly SetUnit[] {
  const units: (SetUnit & { readonly key: string })[] = [];
  for (let i = 0; i < laterals.row.length; i++) {
    if (Number(laterals.point[i]) < 0) continue;
    const flow_lps = needs[i]?.flow_lps ?? 0;
    const border = borderOf(laterals, sets.follow, i);
    const pin = pinOf(laterals, sets.pins, blocks, i);
    const key = [laterals.block[i], laterals.line[i], border, pin].join(" ");
    const last = units.at(-1);
    if (last !== undefined && last.key === key && last.flow_lps + flow_lps <= most_lps) {
      units[units.length - 1] = {
        ...last,
        laterals: [...last.laterals, i],
        flow_lps: last.flow_lps + flow_lps,
      };
    } else units.push({ laterals: [i], flow_lps, border, pin, key });
  }
  return units;
}

function borderOf({ block, variety }: LateralsJob, follow: WateringJob["sets"]["follow"], i: number): number {
  switch (follow) {
    case "rows":
      return 0;
    case "blocks":
      return Number(block[i]);
    case "varieties":
      return Number(variety[i]);
    default:
      return follow satisfies never;
  }
}

/** Set that the person put a lateral in, from 1; 0: any. The last pin that names its row wins. */
export function pinOf(
  { block, line }: LateralsJob,
  pins: WateringJob["sets"]["pins"],
  blocks: WateringJob["blocks"],
  i: number,
): number {
  const number = Number(line[i]);
  const id = blocks[Number(block[i])]?.id;
  return pins.reduce(
    (set, pin) =>
      (pin.block === null || pin.block === id) && number >= pin.fromRow && number <= pin.toRow ? pin.set : set,
    0,
  );
}
