import { emittersAccount, flowAccount, hoseClipsAccount, lateralsAccount } from "../../core/drip/accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { FigureList } from "../strip/figure-list.tsx";
import { wholeLength } from "../strip/whole-length.ts";

/** What hangs on the drip wire, and what all of it would take at once. */
export function NeedFigures({ plan: { rows, drip, project } }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  if (!rows || !drip) return null;
  const { blocks } = project;
  const clips = drip.rows.reduce((sum, { hoseClips }) => sum + hoseClips, 0);
  return (
    <FigureList
      lines={[
        {
          name: "Drip hose",
          how: "from the end post to past the last vine",
          value: wholeLength(drip.lateral_m, units),
          account: () => lateralsAccount(rows, drip, blocks),
        },
        { name: "Emitters", value: grouped(drip.emitters), account: () => emittersAccount(rows, drip, blocks) },
        {
          name: "Water for all at once",
          how: "emitters times their flow",
          value: formatQuantity("flow", drip.flow_lph, units),
          account: () => flowAccount(rows, drip, blocks),
        },
        { name: "Hose clips", value: grouped(clips), account: () => hoseClipsAccount(rows) },
      ]}
    />
  );
}
