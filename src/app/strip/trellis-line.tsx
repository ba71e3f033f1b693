import { linePostsAccount } from "../../core/rows/accounts.ts";
import { allWireAccount } from "../../core/trellis/accounts.ts";
import { useStore } from "../store-context.ts";
import { count } from "./count.ts";
import { ResultLine } from "./result-line.tsx";
import { wholeLength } from "./whole-length.ts";

/** "14,081 ft of wire, 164 line posts". */
export function TrellisLine() {
  const { shownPlan, units: unitsSignal } = useStore();
  const [plan, units] = [shownPlan.value, unitsSignal.value];
  if (!plan?.rows || !plan.trellis) return <>none yet</>;
  const { rows, trellis } = plan;
  const wire_m = trellis.wires.reduce((sum, { length_m }) => sum + length_m, 0);
  return (
    <ResultLine
      parts={[
        {
          value: `${wholeLength(wire_m, units)} of wire`,
          label: "for all purposes",
          account: () => allWireAccount(trellis),
        },
        {
          value: count(rows.linePosts.station_m.length, "line post"),
          label: "in all rows",
          account: () => linePostsAccount(rows),
        },
      ]}
    />
  );
}
