import type { PipeLine } from "../drip/watering.ts";
import { heightReader } from "../ground/elevation.ts";
import type { Ground } from "../ground/ground.ts";
import type { Route } from "../mainline/route.ts";
import type { Mainline } from "../mainline/water-end.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Block, Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import { bendsOf } from "./bends.ts";
import { branchPipes } from "./branch-pipes.ts";
import { branchesOf } from "./branches.ts";
import { earthOf } from "./earth.ts";
import { flexed_deg } from "./elbows.ts";
import { laneConflicts } from "./lane-conflicts.ts";
import { lineTree } from "./line-tree.ts";
import { highPoints, lowPoints } from "./low-points.ts";
import { type Layers, profileOf } from "./profile.ts";
import { sleevesOf } from "./sleeves.ts";
import { teesOf } from "./tees.ts";
import { thrusts } from "./thrust.ts";
import type { Bend, Branch, LaneConflict, Trench } from "./trench.ts";
import { trenchFindings } from "./trench-findings.ts";
import { trenchParts } from "./trench-parts.ts";
import { turningConflicts } from "./turning-room.ts";
import { withFall } from "./with-fall.ts";

/** What the stage needs of a project. */
export type TrenchInput = Pick<Project, "blocks" | "trench" | "mainLine">;

/**
 * The trench of a main line: profile, low and high points, what lies in it, the earth it moves and the rows it comes too near to; null
 * without a route. Findings: those of `trenchFindings`.
 */
export function trench(
  main: Mainline,
  rows: Rows,
  ground: Ground,
  trellis: Trellis,
  _pipes: readonly PipeLine[],
  project: TrenchInput,
): Outcome<Trench> | null {
  const { route } = main;
  if (route === null) return null;
  const settings = project.trench;
  const branches = branchesOf(route);
  const layers = layersOf(settings);
  const drawn = branches.map((branch) =>
    profileOf(route, branch, heightReader(ground.elevation), layers, {
      stationStep_m: settings.stationStep_m,
      groundStep_m: postSpacing_m(project.blocks),
    }),
  );
  const level = drawn.map(({ profile }) => profile);
  const tree = lineTree(level);
  const profiles = settings.grade_ratio === null ? level : withFall(level, tree, settings.grade_ratio, layers);
  const lows = lowPoints(profiles, tree, settings.pipe.inside_mm, settings.leastLow_m);
  const highs = highPoints(profiles, tree, settings.leastLow_m);
  const tees = teesOf(profiles, rows, main, trellis, layers.bedding_m + layers.outside_m / 2);
  const bends = bendsOf(route, branches, flexed_deg(settings.pipe));
  const pipes = branchPipes(
    profiles.map(({ slopeStation_m }) => slopeStation_m.at(-1) ?? 0),
    settings.pipe,
  );
  const ground_m = pipes.reduce((sum_m, { length_m }) => sum_m + length_m, 0);
  const leads = tees.map(({ lead_m, depth_m }) => ({ length_m: lead_m, depth_m }));
  const earth = earthOf(profiles, leads, ground_m, settings);
  const sleeves = main.job === null ? [] : sleevesOf(route, main.job.barriers);
  const { pipe, testPressure_kpa, soilBearing_kpa } = settings;
  const pushed = thrusts(bends, branches.length - 1, branches.length, pipe, testPressure_kpa, soilBearing_kpa);
  const line = {
    rows,
    branches: profiles.map(({ station_m }) => ({ length_m: station_m.at(-1) ?? 0 })),
    pipes,
    tees,
    bends,
    lows,
    highs,
    sleeves,
    thrusts: pushed,
    bedding_m3: earth.bedding_m3,
    settings,
  };
  const leads_m = rows.rows.map(() => 0);
  for (const { row, lead_m } of tees) leads_m[row] = lead_m;
  const dug: Trench = {
    branches,
    profiles,
    lows,
    highs,
    conflicts: conflictsOf(main, route, rows, branches, bends, project),
    bends,
    pipes,
    sleeves,
    thrusts: branches.length === 0 ? [] : pushed,
    parts: branches.length === 0 ? [] : trenchParts(line),
    earth,
    cover_m: layers.cover_m,
    length_m: route.length_m,
    groundLength_m: drawn.every(({ isKnown }) => isKnown) ? ground_m : null,
    leads_m,
  };
  return success(dug, trenchFindings(dug, rows, ground, settings));
}

/** The pipe lies under the cover asked for, and below the frost depth where that is known. */
function layersOf({ cover_m, frostDepth_m, bedding_m, pipe }: TrenchInput["trench"]): Layers {
  return { cover_m: Math.max(cover_m, frostDepth_m ?? 0), outside_m: pipe.outside_mm / 1000, bedding_m };
}

/** The longest of the blocks: noise in heights that are read nearer to each other would lengthen the trench. */
function postSpacing_m(blocks: readonly Block[]): number {
  return Math.max(...blocks.map(({ rows }) => rows.bay_vines * rows.vineSpacing_m));
}

function conflictsOf(
  { job }: Mainline,
  route: Route,
  rows: Rows,
  branches: readonly Branch[],
  bends: readonly Bend[],
  { blocks, trench: settings, mainLine }: TrenchInput,
): readonly LaneConflict[] {
  const near = laneConflicts(route, rows, blocks, mainLine.postDistance_m);
  if (settings.dug === "before-posts" || settings.tool === "hand" || job === null) return near;
  const room_m = settings.turningRoom_m;
  return [...near, ...turningConflicts(route, branches, bends, rows, blocks, job.barriers, room_m)];
}
