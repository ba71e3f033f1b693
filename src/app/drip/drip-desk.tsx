import "./drip.css";
import "./drip-results.css";
import { useStore } from "../store-context.ts";
import { FlowLegend } from "../watering/flow-legend.tsx";
import { AdviceList } from "./advice-list.tsx";
import { EnoughWater } from "./answer.tsx";
import { DripCaution } from "./drip-caution.tsx";
import { EmitterFields } from "./emitter-fields.tsx";
import { EvennessList } from "./evenness-list.tsx";
import { FirstRunPart } from "./first-run-part.tsx";
import { HeadWorks } from "./head-works.tsx";
import { HighestList } from "./highest-list.tsx";
import { HoseFields } from "./hose-fields.tsx";
import { MoreWaterFields } from "./more-water-fields.tsx";
import { NeedFigures } from "./need-figures.tsx";
import { PatternList } from "./pattern-list.tsx";
import { PipeList } from "./pipe-list.tsx";
import { PipeSizeFields } from "./pipe-size-fields.tsx";
import { SeasonFields } from "./season-fields.tsx";
import { SeasonResults } from "./season-results.tsx";
import { SetFields } from "./set-fields.tsx";
import { SetList } from "./set-list.tsx";
import { SupplyPart } from "./supply-part.tsx";
import { WaterFields } from "./water-fields.tsx";

/** All of the drip step: the water you have, what it feeds, and whether it is enough. */
export function DripDesk() {
  const { shownPlan, block: blockSignal } = useStore();
  const [plan, block] = [shownPlan.value, blockSignal.value];
  if (!plan || !block) return null;
  const { water, sets, season, materials } = plan.project;
  const [job, watering] = [plan.watering?.job, plan.watering?.watering];
  return (
    <>
      <EnoughWater plan={plan} />
      <FlowLegend />
      {job && watering && <AdviceList job={job} watering={watering} />}
      <WaterFields water={water} />
      <EmitterFields key={block.id} drip={block.drip} />
      <div class="drip-parts">
        <MoreWaterFields water={water} />
        <HeadWorks works={water.headWorks} />
        <HoseFields key={`hose of ${block.id}`} drip={block.drip} />
        <SetFields sets={sets} />
        <PipeSizeFields sets={sets} />
        <SeasonFields season={season} />
      </div>
      {job && watering && (
        <>
          <SetList plan={plan} job={job} watering={watering} />
          {plan.watering && <SupplyPart watered={plan.watering} name={plan.project.name} />}
          <EvennessList plan={plan} job={job} watering={watering} />
          {plan.watering && <SeasonResults watered={plan.watering} name={plan.project.name} />}
          <div class="drip-parts">
            <PipeList pipes={watering.pipes} />
            <HighestList plan={plan} job={job} watering={watering} />
            <PatternList patterns={watering.patterns} sets={sets} currency={materials.currency} />
            <FirstRunPart plan={plan} />
          </div>
        </>
      )}
      <h3>Hose and emitters</h3>
      <NeedFigures plan={plan} />
      <DripCaution />
    </>
  );
}
