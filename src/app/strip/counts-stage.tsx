import type { Plan } from "../../core/plan.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "./count.ts";
import { packsText } from "./packs-text.ts";
import { Stage } from "./stage.tsx";

/** Totals and the shopping list. */
export function CountsStage() {
  const { shownPlan: planSignal, units: unitsSignal } = useStore();
  const [plan, units] = [planSignal.value, unitsSignal.value];
  if (!plan?.rows) return null;
  const vines = plan.rows.vines.station_m.length;
  return (
    <Stage number={3} name="Materials" result={`${grouped(vines)} vines`}>
      <dl class="figures">
        {figures(plan, units).map(({ name, value, how }) => (
          <>
            <dt>
              {name} <small>{how}</small>
            </dt>
            <dd>{value}</dd>
          </>
        ))}
      </dl>
      <h3>Shopping list</h3>
      <table class="materials">
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">Need</th>
            <th scope="col">Buy</th>
          </tr>
        </thead>
        <tbody>
          {plan.materials?.lines.map((line) => (
            <tr key={line.item}>
              <th scope="row">
                {line.item}
                <small>{line.purpose}</small>
              </th>
              <td>
                {line.unit === "m"
                  ? formatQuantity("length", line.quantity, units, 0)
                  : grouped(Math.ceil(line.quantity - 1e-9))}
              </td>
              <td>{packsText(line, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Stage>
  );
}

function figures(plan: Plan, units: UnitSystem): readonly { name: string; value: string; how: string }[] {
  const length = (value_m: number) => formatQuantity("length", value_m, units, 0);
  const rowLength_m = plan.rows?.blocks.reduce((sum, block) => sum + block.length_m, 0) ?? 0;
  const wires = Object.entries(plan.trellis?.wire_m ?? {});
  return [
    { name: "Rows", value: grouped(plan.rows?.rows.length ?? 0), how: "each with two end posts of its own" },
    { name: "Row length", value: length(rowLength_m), how: "end post to end post" },
    { name: "Vines", value: grouped(plan.rows?.vines.station_m.length ?? 0), how: "without spares" },
    { name: "Line posts", value: grouped(plan.rows?.linePosts.station_m.length ?? 0), how: "between the end posts" },
    { name: "Stakes", value: grouped(plan.rows?.stakes.station_m.length ?? 0), how: "beside the vines" },
    ...wires.map(([purpose, length_m]) => ({
      name: `Wire, ${purpose}`,
      value: length(length_m),
      how: "with both tie-offs of every wire",
    })),
    { name: "Drip hose", value: length(plan.drip?.lateral_m ?? 0), how: "from the end post to past the last vine" },
    { name: "Emitters", value: grouped(plan.drip?.emitters ?? 0), how: "" },
    {
      name: "Water for all at once",
      value: formatQuantity("flow", plan.drip?.flow_lph ?? 0, units),
      how: "emitters times their flow",
    },
  ];
}
