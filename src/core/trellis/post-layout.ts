import type { PostSettings, StakeSettings, TrellisSettings } from "../project/project.ts";
import { lengthArticle } from "./article.ts";
import type { PostLayout } from "./trellis.ts";

/**
 * A post from the height of its highest wire: long enough to stand `above_m` over it and as deep as wished or as the frost goes, in the
 * shortest length that is sold. What is left over goes into the ground.
 */
export function postLayout(
  kind: "end-post" | "line-post" | "brace-post",
  post: PostSettings,
  top_m: number,
  angle_deg: number,
  { postLengths_m, frostDepth_m }: Pick<TrellisSettings, "postLengths_m" | "frostDepth_m">,
): PostLayout {
  const depth_m = Math.max(post.embedment_m, frostDepth_m ?? 0);
  return layout(kind, { ...post, embedment_m: depth_m }, top_m, angle_deg, postLengths_m, post.diameter_mm);
}

/** A training stake, from the height of the highest wire it is clipped to. */
export function stakeLayout(stake: StakeSettings, top_m: number, lengths_m: readonly number[]): PostLayout {
  return layout("stake", stake, top_m, 90, lengths_m, null);
}

/** The shortest length sold that reaches; the length needed where none does. */
export function soldLength_m(needed_m: number, lengths_m: readonly number[]): number {
  return lengths_m.find((each) => each >= needed_m - 1e-6) ?? needed_m;
}

function layout(
  kind: string,
  { embedment_m, above_m, length_m: stated_m }: Pick<PostSettings, "embedment_m" | "above_m" | "length_m">,
  wire_m: number,
  angle_deg: number,
  lengths_m: readonly number[],
  diameter_mm: number | null,
): PostLayout {
  const sine = Math.sin((angle_deg * Math.PI) / 180);
  const top_m = wire_m + above_m;
  const needed_m = (top_m + embedment_m) / sine;
  const length_m = stated_m ?? soldLength_m(needed_m, lengths_m);
  return {
    article: lengthArticle(kind, length_m),
    length_m,
    top_m,
    depth_m: length_m * sine - top_m,
    angle_deg,
    diameter_mm,
  };
}
