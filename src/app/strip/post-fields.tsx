import { type Block, type PostSettings, type WireHold, wireHolds } from "../../core/project/project.ts";
import type { BlockTrellis, PostLayout } from "../../core/trellis/trellis.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "./choice-field.tsx";
import { CountField } from "./count-field.tsx";
import { OptionalQuantityField } from "./optional-quantity-field.tsx";
import { PostLengthsField } from "./post-lengths-field.tsx";
import { QuantityField } from "./quantity-field.tsx";

const holdNames: Readonly<Record<WireHold, string>> = {
  staple: "staples",
  notch: "notches",
  hole: "drilled holes",
  "eye-bolt": "eye bolts",
};
const holds = wireHolds.map((value) => ({ value, label: holdNames[value] }));

/** End posts, line posts, stakes: how they hold wire, how deep they stand, how long they are bought. */
export function PostFields({
  block: { trellis },
  structure,
}: {
  readonly block: Block;
  readonly structure: BlockTrellis | undefined;
}) {
  const units = useStore().units.value;
  const { stake } = trellis;
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  return (
    <>
      <h3>End posts</h3>
      <OnePost of="End post" path="trellis.endPost" post={trellis.endPost} layout={structure?.endPost} />
      <h3>Line posts</h3>
      <OnePost of="Line post" path="trellis.linePost" post={trellis.linePost} layout={structure?.linePost} />
      <h3>Stakes</h3>
      <div class="fields">
        <CountField label="Stakes beside each vine" value={trellis.stakesPerVine} path="trellis.stakesPerVine" />
        {trellis.stakesPerVine > 0 && (
          <>
            <QuantityField
              label="Stake in the ground"
              kind="length"
              value={stake.embedment_m}
              path="trellis.stake.embedment"
            />
            <QuantityField
              label="Stake over its top wire"
              kind="length"
              value={stake.above_m}
              path="trellis.stake.above"
            />
            <OptionalQuantityField
              label="Stake length"
              kind="length"
              value={stake.length_m}
              like={structure?.stake?.length_m ?? 1}
              path="trellis.stake.length"
              without={
                structure?.stake
                  ? `${length(structure.stake.length_m)}, the shortest sold that reaches`
                  : "the shortest sold that reaches"
              }
            />
          </>
        )}
      </div>
      <h3>For all of them</h3>
      <div class="fields">
        <OptionalQuantityField
          label="Frost goes down to"
          kind="length"
          value={trellis.frostDepth_m}
          like={1}
          path="trellis.frostDepth"
          without="not known, nothing is set deeper for it"
        />
        <PostLengthsField label="Posts are sold in" lengths_m={trellis.postLengths_m} path="trellis.postLengths" />
        <PostLengthsField label="Stakes are sold in" lengths_m={trellis.stakeLengths_m} path="trellis.stakeLengths" />
      </div>
    </>
  );
}

function OnePost({
  of,
  path,
  post,
  layout,
}: {
  readonly of: string;
  readonly path: string;
  readonly post: PostSettings;
  readonly layout: PostLayout | undefined;
}) {
  const units = useStore().units.value;
  const reached = layout === undefined ? "" : `${formatQuantity("length", layout.length_m, units)}, `;
  return (
    <div class="fields">
      <ChoiceField label={`${of} holds wire by`} value={post.holds} path={`${path}.holds`} choices={holds} />
      {(post.holds === "notch" || post.holds === "hole") && (
        <>
          <QuantityField
            label={`${of}, lowest ${post.holds}`}
            kind="length"
            value={post.firstNotch_m}
            path={`${path}.firstNotch`}
          />
          <QuantityField
            label={`${of}, from ${post.holds} to ${post.holds}`}
            kind="length"
            value={post.notchPitch_m}
            path={`${path}.notchPitch`}
          />
        </>
      )}
      <QuantityField label={`${of} thickness`} kind="diameter" value={post.diameter_mm} path={`${path}.diameter`} />
      <QuantityField label={`${of} in the ground`} kind="length" value={post.embedment_m} path={`${path}.embedment`} />
      <QuantityField label={`${of} over its top wire`} kind="length" value={post.above_m} path={`${path}.above`} />
      <OptionalQuantityField
        label={`${of} length`}
        kind="length"
        value={post.length_m}
        like={layout?.length_m ?? 1}
        path={`${path}.length`}
        without={`${reached}the shortest sold that reaches`}
      />
    </div>
  );
}
