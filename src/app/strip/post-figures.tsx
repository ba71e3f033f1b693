import type { PostSettings, StakeSettings, TrellisSettings } from "../../core/project/project.ts";
import { postDepthAccount, postLengthAccount } from "../../core/trellis/structure-accounts.ts";
import type { BlockTrellis, PostLayout } from "../../core/trellis/trellis.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { type FigureLine, FigureList } from "./figure-list.tsx";

interface PostFiguresProps {
  readonly trellis: TrellisSettings;
  readonly structure: BlockTrellis;
}

/** How long posts and stakes are bought, and how deep they stand. */
export function PostFigures({ trellis, structure }: PostFiguresProps) {
  const units = useStore().units.value;
  const { frostDepth_m, postLengths_m, stakeLengths_m } = trellis;
  const lines = (
    what: string,
    post: PostLayout | null,
    settings: PostSettings | StakeSettings,
    frost_m: number | null,
    sold_m: readonly number[],
  ): readonly FigureLine[] =>
    post === null
      ? []
      : [
          {
            name: what,
            how: "length to buy",
            value: formatQuantity("length", post.length_m, units),
            account: () => postLengthAccount(post, settings, frost_m, sold_m),
          },
          {
            name: `${what}, in the ground`,
            value: formatQuantity("length", post.depth_m, units),
            account: () => postDepthAccount(post),
          },
        ];
  return (
    <FigureList
      lines={[
        ...lines("End post", structure.endPost, trellis.endPost, frostDepth_m, postLengths_m),
        ...lines("Line post", structure.linePost, trellis.linePost, frostDepth_m, postLengths_m),
        ...lines(
          "Brace post",
          structure.bracePost,
          { ...trellis.endPost, length_m: null },
          frostDepth_m,
          postLengths_m,
        ),
        ...lines("Stake", structure.stake, trellis.stake, null, stakeLengths_m),
      ]}
    />
  );
}
