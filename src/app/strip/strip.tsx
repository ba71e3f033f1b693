import { useStore } from "../store-context.ts";
import { Caution } from "./caution.tsx";
import { CountsStage } from "./counts-stage.tsx";
import { GroundStage } from "./ground-stage.tsx";
import { HandOver } from "./hand-over.tsx";
import { Notes, notesSummary } from "./notes.tsx";
import { RowsStage } from "./rows-stage.tsx";
import { Stage } from "./stage.tsx";

/** The steps, one under another in the order of the work. */
export function Strip() {
  const { shownPlan, opened } = useStore();
  const findings = shownPlan.value?.findings ?? [];
  const needsReading = findings.some(({ severity }) => severity !== "note");
  return (
    <div class="strip" key={opened.value}>
      <GroundStage />
      <RowsStage />
      <CountsStage />
      <Stage number={4} name="Notes" result={notesSummary(findings)} startsOpen={needsReading}>
        <Notes />
      </Stage>
      <HandOver />
      <Caution />
    </div>
  );
}
