import type { Plan } from "../../core/plan.ts";
import type { WirePurpose } from "../../core/project/project.ts";
import { endPostsAccount, linePostsAccount, stakesAccount } from "../../core/rows/accounts.ts";
import { stakeClipsAccount, wireAccount } from "../../core/trellis/accounts.ts";
import { useStore } from "../store-context.ts";
import { BlockChoice } from "./block-choice.tsx";
import { ChoiceField } from "./choice-field.tsx";
import { grouped } from "./count.ts";
import { FigureList } from "./figure-list.tsx";
import { More } from "./more.tsx";
import { TrellisParts } from "./trellis-parts.tsx";
import { wholeLength } from "./whole-length.ts";
import { tieOffChoices } from "./wire-details.tsx";
import { WireTable } from "./wire-table.tsx";

const purposes: readonly WirePurpose[] = ["fruiting", "drip", "foliage"];

/** Wires, the ends of rows, posts and stakes, what they must hold; and what all of it comes to. */
export function TrellisDesk() {
  const { shownPlan, block: blockSignal } = useStore();
  const [plan, block] = [shownPlan.value, blockSignal.value];
  if (!plan || !block) return null;
  const { tieOffStart, tieOffEnd } = block.trellis;
  const at = plan.trellis?.blocks.findIndex((each) => each.block === block.id) ?? -1;
  return (
    <>
      <BlockChoice />
      <WireTable key={block.id} />
      <TrellisParts
        key={`parts of ${block.id}`}
        block={block}
        structure={plan.trellis?.blocks[at]}
        loads={plan.trellis?.loads.blocks[at]}
      />
      <More>
        <ChoiceField
          label="Other wires at the start"
          value={tieOffStart.kind}
          path="trellis.tieOffStart.kind"
          choices={tieOffChoices}
        />
        <ChoiceField
          label="Other wires at the end"
          value={tieOffEnd.kind}
          path="trellis.tieOffEnd.kind"
          choices={tieOffChoices}
        />
      </More>
      {plan.rows && plan.trellis && <TrellisFigures plan={plan} />}
    </>
  );
}

function TrellisFigures({ plan: { rows, trellis, project } }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  if (!rows || !trellis) return null;
  const { blocks } = project;
  const clips = trellis.rows.reduce((sum, { stakeClips }) => sum + stakeClips, 0);
  return (
    <FigureList
      lines={[
        ...purposes.flatMap((purpose) => {
          const length_m = trellis.wire_m[purpose];
          if (length_m === undefined) return [];
          return [
            {
              name: `Wire, ${purpose}`,
              how: "with both tie-offs of every wire",
              value: wholeLength(length_m, units),
              account: () => wireAccount(rows, blocks, purpose),
            },
          ];
        }),
        {
          name: "End posts",
          how: "two a row",
          value: grouped(2 * rows.rows.length),
          account: () => endPostsAccount(rows),
        },
        {
          name: "Line posts",
          how: "between the end posts",
          value: grouped(rows.linePosts.station_m.length),
          account: () => linePostsAccount(rows),
        },
        {
          name: "Stakes",
          how: "beside the vines",
          value: grouped(rows.stakes.station_m.length),
          account: () => stakesAccount(rows, blocks),
        },
        { name: "Stake clips", value: grouped(clips), account: () => stakeClipsAccount(rows, blocks) },
      ]}
    />
  );
}
