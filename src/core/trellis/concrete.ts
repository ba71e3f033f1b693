import type { EndAssemblySettings } from "../project/project.ts";
import type { PostLayout } from "./trellis.ts";

/** Bags of dry mix round one post: the hole less the post in it, as deep as the post stands, in whole bags. Geometry. */
export function concreteBags({ concreteHole_m, concreteBag_l }: EndAssemblySettings, post: PostLayout): number {
  if (concreteHole_m === null) return 0;
  const post_m = (post.diameter_mm ?? 0) / 1000;
  const ring_m2 = (Math.PI / 4) * Math.max(0, concreteHole_m ** 2 - post_m ** 2);
  return Math.ceil((ring_m2 * Math.max(0, post.depth_m) * 1000) / concreteBag_l - 1e-9);
}
