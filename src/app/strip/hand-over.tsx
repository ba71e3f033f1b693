import { isBlank } from "../../core/drawing/blank.ts";
import { serializeProject } from "../../core/project/serialize.ts";
import { download, fileStem } from "../download.ts";
import { lazily } from "../lazily.tsx";
import { useStore } from "../store-context.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

const Files = lazily(async () => (await import("./hand-over-files.tsx")).HandOverFiles);

/** Everything that leaves the screen: the project file and the plan in open formats. */
export function HandOver() {
  const store = useStore();
  const plan = store.shownPlan.value;
  if (!plan) return null;
  const { project } = plan;
  const stem = fileStem(project.name);
  return (
    <Stage number={8} name="Hand over" result={isBlank(project) ? afterTheParcel : "GeoJSON, tables, project file"}>
      {project.parcels.some(({ outline }) => outline === "walked") && (
        <p class="sketch-caution">
          An outline here was walked with a phone: a sketch, metres off. Good for planning; do not stake from it.
        </p>
      )}
      <ul class="exports">
        <li>
          <button
            type="button"
            onClick={() => download(`${stem}.geojson`, serializeProject(project), "application/geo+json")}
          >
            Save the project
          </button>
          <span>{stem}.geojson, opens again here and in any GIS</span>
        </li>
      </ul>
      <Files />
    </Stage>
  );
}
