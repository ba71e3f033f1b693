import { outward } from "../mainline/outward.ts";
import type { Row } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";

/** The tee is at the end post. */
const atPost_m = 0.01;

/** What is laid in the ground from a tee on to the end post; 0 where the tee is on the row's own side of it, under the hose. */
export function lead_m(row: Pick<Row, "start" | "end">, waterEnd: "start" | "end", x_m: number, y_m: number): number {
  const [post, out] = outward(row, waterEnd);
  const [dx, dy] = [x_m - post[0], y_m - post[1]];
  return dx * out[0] + dy * out[1] > atPost_m ? Math.hypot(dx, dy) : 0;
}

/** Height of the hose over the ground: the lowest drip wire, else the lowest wire of all; 0 for rows without wires. */
export function dripHeight_m(block: string, { blocks }: Pick<Trellis, "blocks">): number {
  const wires = blocks.find((each) => each.block === block)?.wires ?? [];
  const drip = wires.filter(({ wire }) => wire.purpose === "drip");
  const heights_m = (drip.length > 0 ? drip : wires).map(({ height_m }) => height_m);
  return heights_m.length === 0 ? 0 : Math.min(...heights_m);
}
