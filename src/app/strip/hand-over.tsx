import { fileName as exportName, formats } from "../../core/exchange/formats.ts";
import { serializeProject } from "../../core/project/serialize.ts";
import { download, fileStem } from "../download.ts";
import { useStore } from "../store-context.ts";
import { isBlank } from "./is-blank.ts";
import { afterTheParcel } from "./later.ts";
import { Stage } from "./stage.tsx";

/** Everything that leaves the screen: the project file and the plan in open formats. */
export function HandOver() {
  const store = useStore();
  const plan = store.shownPlan.value;
  if (!plan) return null;
  const { project } = plan;
  const stem = fileStem(project.name);
  const hasRows = (plan.rows?.rows.length ?? 0) > 0;
  return (
    <Stage number={7} name="Hand over" result={isBlank(project) ? afterTheParcel : "GeoJSON, tables, project file"}>
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
        {formats
          .filter(({ isDelivered }) => isDelivered)
          .map((format) => (
            <li key={exportName(format)}>
              <button
                type="button"
                disabled={!hasRows}
                onClick={() => download(`${stem}-${exportName(format)}`, format.text(plan), format.mediaType)}
              >
                {titles[format.of]} <small>{format.as === "geojson" ? "GeoJSON" : format.as.toUpperCase()}</small>
              </button>
              <span>{contents[`${format.of}.${format.as}`] ?? ""}</span>
            </li>
          ))}
      </ul>
    </Stage>
  );
}

const titles = {
  rows: "Rows",
  vines: "Vines",
  posts: "Posts",
  stakes: "Stakes",
  materials: "Materials",
  plan: "The whole plan",
} as const;

const contents: Readonly<Record<string, string>> = {
  "rows.geojson": "a line a row, start to end, with lengths and counts",
  "vines.geojson": "a point a vine, with row and station",
  "posts.geojson": "a point an end post or line post",
  "rows.csv": "the row table for a spreadsheet",
  "materials.csv": "the shopping list",
  "plan.json": "every number of the plan, for programs",
};
