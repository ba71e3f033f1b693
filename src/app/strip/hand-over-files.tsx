import { type ExportFormat, fileName as exportName, formats } from "../../core/exchange/old-formats.ts";
import type { Plan } from "../../core/plan.ts";
import { download, fileStem } from "../download.ts";
import { useStore } from "../store-context.ts";

/** The plan in open formats, a button each; fetched when Hand over is opened. */
export function HandOverFiles() {
  const plan = useStore().shownPlan.value;
  if (!plan) return null;
  const hasRows = (plan.rows?.rows.length ?? 0) > 0;
  const hasRoute = (plan.mainline?.route ?? null) !== null;
  const has = ({ of }: ExportFormat) => (of === "route" || of === "stations" ? hasRoute : hasRows);
  return (
    <ul class="exports">
      {formats
        .filter(({ isDelivered }) => isDelivered)
        .map((format) => (
          <li key={exportName(format)}>
            <button type="button" disabled={!has(format)} onClick={() => void handOver(plan, format)}>
              {titles[format.of]} <small>{format.as === "geojson" ? "GeoJSON" : format.as.toUpperCase()}</small>
            </button>
            <span>{contents[`${format.of}.${format.as}`] ?? ""}</span>
          </li>
        ))}
    </ul>
  );
}

async function handOver(plan: Plan, format: ExportFormat): Promise<void> {
  const whole = format.of === "plan" ? await withPlantingArea(plan) : plan;
  download(`${fileStem(plan.project.name)}-${exportName(format)}`, format.text(whole), format.mediaType);
}

/** A file holds every number, the one too that the page may still be waiting for. */
async function withPlantingArea(plan: Plan): Promise<Plan> {
  if (plan.ground?.plantingArea !== null) return plan;
  const { createPlanner } = await import("../../core/planner.ts");
  return createPlanner().plan(plan.project);
}

const titles = {
  rows: "Rows",
  vines: "Vines",
  posts: "Posts",
  stakes: "Stakes",
  route: "Main line",
  stations: "Trench stations",
  materials: "Materials",
  coils: "Cut list",
  prices: "Price list",
  plan: "The whole plan",
} as const;

const contents: Readonly<Record<string, string>> = {
  "rows.geojson": "a line a row, start to end, with lengths and counts",
  "vines.geojson": "a point a vine, with row and station",
  "posts.geojson": "a point an end post or line post",
  "route.geojson": "a line a branch of the main line, a point for all it meets",
  "stations.csv": "where to dig and how deep, station by station",
  "rows.csv": "the row table for a spreadsheet",
  "materials.csv": "the shopping list",
  "coils.csv": "which coil is cut for which row",
  "plan.json": "every number of the plan, for programs",
};
