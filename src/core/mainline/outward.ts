import type { Row } from "../rows/rows.ts";

/** An end post and the direction out of the row there. */
export function outward(
  { start, end }: Pick<Row, "start" | "end">,
  at: "start" | "end",
): readonly [post: Row["start"], out: readonly [x: number, y: number]] {
  const [post, other] = at === "start" ? [start, end] : [end, start];
  const length_m = Math.hypot(post[0] - other[0], post[1] - other[1]);
  return [post, length_m === 0 ? [0, 0] : [(post[0] - other[0]) / length_m, (post[1] - other[1]) / length_m]];
}
