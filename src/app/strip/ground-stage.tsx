import { useState } from "preact/hooks";
import { isBlank } from "../../core/drawing/blank.ts";
import { parcelAreaAccount, plantingAreaAccount } from "../../core/ground/accounts.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity } from "../../core/units.ts";
import { DrawnList } from "../drawing/lazy-parts.tsx";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { FigureList } from "./figure-list.tsx";
import { More } from "./more.tsx";
import { QuantityField } from "./quantity-field.tsx";
import { ResultLine } from "./result-line.tsx";
import { Stage } from "./stage.tsx";

const HeightsPart = lazily(async () => (await import("../terrain/heights-part.tsx")).HeightsPart);

/** The parcel: how much there is, and what planting keeps away from. */
export function GroundStage() {
  const store = useStore();
  const plan = store.shownPlan.value;
  // Whoever began with an empty map goes on drawing: the step stays open when the parcel is there.
  const [beganBlank] = useState(plan !== null && isBlank(plan.project));
  if (!plan) return null;
  const blank = isBlank(plan.project);
  const { setback_m, obstacleDistance_m, noPlantDistance_m, alleyWidth_m } = plan.project.ground;
  return (
    <Stage number={1} name="Ground" stage="ground" result={<GroundResult plan={plan} />} startsOpen={beganBlank}>
      {blank && <p class="prompt">Draw the parcel to begin: its corners by clicks on the map, or typed.</p>}
      <DrawnList />
      {plan.ground && <GroundFigures plan={plan} />}
      <div class="fields">
        <QuantityField label="Setback from edges" kind="length" value={setback_m} path="ground.setback" />
        <QuantityField
          label="Distance from obstacles"
          kind="length"
          value={obstacleDistance_m}
          path="ground.obstacleDistance"
        />
      </div>
      <More>
        <QuantityField
          label="Distance from no-plant lines"
          kind="length"
          value={noPlantDistance_m}
          path="ground.noPlantDistance"
        />
        <QuantityField label="Cross alley width" kind="length" value={alleyWidth_m} path="ground.alleyWidth" />
        <p class="aside">An edge, obstacle or line that states a distance of its own keeps it.</p>
      </More>
      <HeightsPart />
    </Stage>
  );
}

function GroundResult({ plan }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  const { ground, project } = plan;
  if (!ground) return <>{isBlank(project) ? "nothing drawn yet" : "could not be laid out"}</>;
  const area = formatQuantity("area", ground.parcelArea_m2, units);
  return <ResultLine parts={[{ value: area, label: "parcel", account: () => parcelAreaAccount(ground) }]} />;
}

function GroundFigures({ plan: { ground, project } }: { readonly plan: Plan }) {
  const units = useStore().units.value;
  if (!ground) return null;
  const planting_m2 = ground.plantingArea_m2;
  return (
    <FigureList
      lines={[
        {
          name: "Parcel",
          value: formatQuantity("area", ground.parcelArea_m2, units),
          account: () => parcelAreaAccount(ground),
        },
        {
          name: "Planting area",
          how: "less setbacks and obstacles, before headlands",
          value: planting_m2 === null ? "being worked out" : formatQuantity("area", planting_m2, units),
          account: planting_m2 === null ? null : () => plantingAreaAccount(ground, project.ground),
        },
      ]}
    />
  );
}
