import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { QuantityField } from "./quantity-field.tsx";
import { Stage } from "./stage.tsx";

/** The parcel: how much there is, and what planting keeps away from. */
export function GroundStage() {
  const store = useStore();
  const [plan, units] = [store.shownPlan.value, store.units.value];
  if (!plan) return null;
  const { project } = plan;
  const area = (value: number | null | undefined) => (value == null ? "—" : formatQuantity("area", value, units));
  const result = plan.ground ? `${area(plan.ground.parcelArea_m2)} parcel` : "could not be laid out";
  const { setback_m, obstacleDistance_m, noPlantDistance_m, alleyWidth_m } = project.ground;
  return (
    <Stage number={1} name="Ground" result={result}>
      <dl class="figures">
        <dt>Parcel</dt>
        <dd>{area(plan.ground?.parcelArea_m2)}</dd>
        <dt>
          Planting area <small>less setbacks and obstacles, before headlands</small>
        </dt>
        <dd>{area(plan.ground?.plantingArea_m2)}</dd>
      </dl>
      <div class="fields">
        <QuantityField label="Setback from edges" kind="length" value={setback_m} path="ground.setback" />
        <QuantityField
          label="Distance from obstacles"
          kind="length"
          value={obstacleDistance_m}
          path="ground.obstacleDistance"
        />
        <QuantityField
          label="Distance from no-plant lines"
          kind="length"
          value={noPlantDistance_m}
          path="ground.noPlantDistance"
        />
        <QuantityField label="Cross alley width" kind="length" value={alleyWidth_m} path="ground.alleyWidth" />
      </div>
      <p class="aside">A feature that states a distance of its own keeps it.</p>
    </Stage>
  );
}
