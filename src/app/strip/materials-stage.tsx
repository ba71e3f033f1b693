import { isBlank } from "../../core/drawing/blank.ts";
import { materialAccounts, shoppingLinesAccount } from "../../core/materials/accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { vinesAccount } from "../../core/rows/accounts.ts";
import { formatQuantity } from "../../core/units.ts";
import { Figure } from "../figure/figure.tsx";
import { useStore } from "../store-context.ts";
import { count, grouped } from "./count.ts";
import { CountField } from "./count-field.tsx";
import { afterTheParcel } from "./later.ts";
import { More } from "./more.tsx";
import { packsText } from "./packs-text.ts";
import { QuantityField } from "./quantity-field.tsx";
import { ResultLine } from "./result-line.tsx";
import { Stage } from "./stage.tsx";
import { wholeLength } from "./whole-length.ts";

/** The shopping list, with spares, in the packages things are sold in. */
export function MaterialsStage() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  return (
    <Stage number={6} name="Materials" stage="materials" result={<MaterialsResult plan={plan} />}>
      <ShoppingList plan={plan} />
      <PackFields />
    </Stage>
  );
}

function MaterialsResult({ plan }: { readonly plan: Plan }) {
  const { rows, trellis, drip, materials, project } = plan;
  if (!rows) return <>{isBlank(project) ? afterTheParcel : "none yet"}</>;
  return (
    <ResultLine
      parts={[
        {
          value: count(rows.vines.station_m.length, "vine"),
          label: "without spares",
          account: () => vinesAccount(rows),
        },
        ...(trellis && drip && materials
          ? [
              {
                value: `${count(materials.lines.length, "thing")} to buy`,
                label: "lines of the shopping list",
                account: () =>
                  shoppingLinesAccount(materialAccounts(rows, trellis, drip, project.blocks, project.materials)),
              },
            ]
          : []),
      ]}
    />
  );
}

function ShoppingList({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const { rows, trellis, drip, materials, project } = plan;
  if (!rows || !trellis || !drip || !materials) return null;
  const accounts = () => materialAccounts(rows, trellis, drip, project.blocks, project.materials);
  return (
    <>
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
          {materials.lines.map((line, i) => {
            const thickness = line.diameter_mm === null ? "" : formatQuantity("diameter", line.diameter_mm, units);
            const need =
              line.unit === "m" ? wholeLength(line.quantity, units) : grouped(Math.ceil(line.quantity - 1e-9));
            return (
              <tr key={`${line.item} ${thickness}`}>
                <th scope="row">
                  {line.item}
                  {thickness && `, ${thickness}`}
                  <small>{line.purpose}</small>
                </th>
                <td>
                  <Figure value={need} label={`${line.item}, needed`} account={() => accounts()[i]?.quantity ?? null} />
                </td>
                <td>
                  <Figure
                    value={packsText(line, units)}
                    label={`${line.item}, to buy`}
                    account={() => accounts()[i]?.packs ?? accounts()[i]?.quantity ?? null}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

function PackFields() {
  const materials = useStore().shownPlan.value?.project.materials;
  if (!materials) return null;
  return (
    <>
      <h3>Packages and spares</h3>
      <div class="fields">
        <QuantityField
          label="Coil of wire"
          kind="length"
          value={materials.wireCoils_m[0] ?? 0}
          path="materials.wireCoil"
        />
        <QuantityField
          label="Coil of hose"
          kind="length"
          value={materials.hoseCoils_m[0] ?? 0}
          path="materials.hoseCoil"
        />
        <QuantityField label="Spare vines" kind="ratio" value={materials.vineSpare_ratio} path="materials.vineSpare" />
      </div>
      <More>
        <CountField label="Stake clips in a bag" value={materials.stakeClipBag} path="materials.stakeClipBag" />
        <CountField label="Hose clips in a bag" value={materials.hoseClipBag} path="materials.hoseClipBag" />
        <CountField label="Emitters in a bag" value={materials.emitterBag} path="materials.emitterBag" />
        <QuantityField label="Spare clips" kind="ratio" value={materials.clipSpare_ratio} path="materials.clipSpare" />
        <QuantityField
          label="Spare emitters"
          kind="ratio"
          value={materials.emitterSpare_ratio}
          path="materials.emitterSpare"
        />
        <QuantityField
          label="Spare line posts"
          kind="ratio"
          value={materials.linePostSpare_ratio}
          path="materials.linePostSpare"
        />
        <CountField label="Spare end posts" value={materials.endPostSpare} path="materials.endPostSpare" />
      </More>
    </>
  );
}
