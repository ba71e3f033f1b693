import { type HeightAt, heightReader } from "../ground/elevation.ts";
import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import { articlePrices } from "./article-prices.ts";
import { blockJob } from "./block-job.ts";
import { lateralsJob } from "./laterals-job.ts";
import { lineJob } from "./line-job.ts";
import { pricedSizes } from "./priced-sizes.ts";
import type { PricedSize, WateringJob } from "./watering-job.ts";

/** What the stage needs of a project. */
export type WateringInput = Pick<
  Project,
  "blocks" | "sources" | "mainLine" | "trench" | "water" | "sets" | "season" | "materials"
>;

/**
 * The job of a plan. The gauge stands on the ground at the source unless the water says its height; all heights that are not known are the gauge's
 * own, so that what is not known counts as level.
 */
export function wateringJob(
  rows: Rows,
  main: Mainline,
  ground: Ground,
  trellis: Pick<Trellis, "blocks">,
  project: WateringInput,
): WateringJob {
  const { blocks, trench, water, sets, season, materials } = project;
  const heightAt: HeightAt = ground.elevation.kind === "flat" ? () => null : heightReader(ground.elevation);
  const source = sourceOf(main, ground, project);
  const atSource_m = source === null ? null : heightAt(source[0], source[1]);
  const unknown_m = water.height_m ?? atSource_m ?? firstKnown_m(rows, heightAt);
  const under_m = Math.max(trench.cover_m, trench.frostDepth_m ?? 0) + trench.pipe.outside_mm / 2000;
  const { laterals, isKnown } = lateralsJob(rows, main, blocks, trellis, heightAt, { under_m, unknown_m });
  const step_m = Math.max(...blocks.map((block) => block.rows.bay_vines * block.rows.vineSpacing_m));
  const line = main.route === null ? null : lineJob(main.route, heightAt, { step_m, under_m, unknown_m });
  const isSourceKnown = source === null || water.height_m !== null || atSource_m !== null;
  return {
    water,
    sets,
    season,
    source: {
      height_m: unknown_m,
      isLevel: !(isSourceKnown && isKnown && (line?.isKnown ?? true)),
      latitude_deg: (source === null ? ground.frame.origin : ground.frame.toLonLat(source))[1],
    },
    line: line?.line ?? null,
    blocks: blocks.map(blockJob),
    laterals,
    pipe: trench.pipe,
    sizes: wideEnough(pricedSizes(sets.family, materials), blocks),
    prices: articlePrices(materials),
  };
}

/** A main line is not narrower than the risers that leave it: common practice, no source. */
function wideEnough(sizes: readonly PricedSize[], blocks: WateringInput["blocks"]): readonly PricedSize[] {
  const riser_mm = Math.min(...blocks.map(({ drip }) => drip.riserInside_mm));
  const wide = sizes.filter(({ inside_mm }) => inside_mm >= riser_mm);
  return wide.length > 0 ? wide : sizes.slice(-1);
}

function firstKnown_m({ rows }: Rows, heightAt: HeightAt): number {
  for (const { start } of rows) {
    const height_m = heightAt(start[0], start[1]);
    if (height_m !== null) return height_m;
  }
  return 0;
}

/** Where the route begins; without one the source that is chosen, else the first. */
function sourceOf({ route }: Mainline, { frame }: Ground, { sources, mainLine }: WateringInput): PlanePoint | null {
  if (route !== null) return planePoint(Number(route.xy[0]), Number(route.xy[1]));
  const source = sources.find(({ key }) => mainLine.source === null || key === mainLine.source);
  return source === undefined ? null : frame.toPlane(source.at);
}
