import { useStore } from "../store-context.ts";
import { Caution } from "./caution.tsx";
import { DripStage } from "./drip-stage.tsx";
import { GroundStage } from "./ground-stage.tsx";
import { HandOver } from "./hand-over.tsx";
import { MainlineStage } from "./mainline-stage.tsx";
import { MaterialsStage } from "./materials-stage.tsx";
import { RowsStage } from "./rows-stage.tsx";
import { TrellisStage } from "./trellis-stage.tsx";
import { TrenchStage } from "./trench-stage.tsx";

/** The steps, one under another in the order of the work. */
export function Strip() {
  const { opened } = useStore();
  return (
    <div class="strip" key={opened.value}>
      <GroundStage />
      <RowsStage />
      <MainlineStage />
      <TrellisStage />
      <DripStage />
      <TrenchStage />
      <MaterialsStage />
      <HandOver />
      <Caution />
    </div>
  );
}
