import { type HoseSize, usualHose } from "../drip/hose-size.ts";
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
import { branchesOf } from "./branches.ts";
import { earthOf } from "./earth.ts";
import { flexed_deg } from "./elbows.ts";
import { laidPipes } from "./laid-pipes.ts";
import { laneConflicts } from "./lane-conflicts.ts";
import { type Laid, layPipes } from "./lay-pipes.ts";
import { openEnds, runFittings, setValves } from "./line-fittings.ts";
import { lineTree } from "./line-tree.ts";
import { pipePlaces } from "./pipe-places.ts";
import { linesOn } from "./pipes-on-legs.ts";
import { type Layers, profileOf } from "./profile.ts";
import { sleevesOf } from "./sleeves.ts";
import { teesOf } from "./tees.ts";
import { pushedPlaces, thrusts } from "./thrust.ts";
import type { Bend, Branch, LaneConflict, Trench } from "./trench.ts";
import { trenchFindings } from "./trench-findings.ts";
import type { TappedTee } from "./trench-line.ts";
import { trenchParts } from "./trench-parts.ts";
import { turningConflicts } from "./turning-room.ts";
import { withFall } from "./with-fall.ts";

/** What the stage needs of a project. */
export type TrenchInput = Pick<Project, "blocks" | "trench" | "mainLine">;

/**
 * The trench of a main line: profile, low and high points, what lies in it, the earth it moves and the rows it comes too near to; null
 * without a route. `pipes`: as the watering chose them; none: the pipe that is set. Findings: those of `trenchFindings`.
 */
export function trench(
  main: Mainline,
  rows: Rows,
  ground: Ground,
  trellis: Trellis,
  pipes: readonly PipeLine[],
  project: TrenchInput,
): Outcome<Trench> | null {
  const { route } = main;
  if (route === null) return null;
  const settings = project.trench;
  const branches = branchesOf(route);
  const laid = layPipes(route, pipes, settings.pipe);
  const layers = layersOf(settings, laid.thickest_mm);
  const drawn = branches.map((branch) =>
    profileOf(route, branch, heightReader(ground.elevation), layers, {
      stationStep_m: settings.stationStep_m,
      groundStep_m: postSpacing_m(project.blocks),
    }),
  );
  const level = drawn.map(({ profile }) => profile);
  const tree = lineTree(level);
  const profiles = settings.grade_ratio === null ? level : withFall(level, tree, settings.grade_ratio, layers);
  const tees = teesOf(profiles, rows, main, trellis, layers.bedding_m + layers.outside_m / 2).map((tee): TappedTee => {
    return { ...tee, pipe: laid.tapped(tee.point), hose: hoseOf(rows.rows[tee.row]?.block, project.blocks) };
  });
  const bends = bendsOf(route, branches, (leg) => stiffest_deg(laid, leg));
  const ends = openEnds(laid.runs);
  const inPipe = pipePlaces(profiles, tree, laid, ends, settings.leastLow_m);
  const ground_m = profiles.reduce((sum_m, { slopeStation_m }) => sum_m + (slopeStation_m.at(-1) ?? 0), 0);
  const pieces = laidPipes(laid.runs, profiles);
  const leads = tees.map(({ lead_m, depth_m }) => ({ length_m: lead_m, depth_m }));
  const earth = earthOf(profiles, leads, { pipes: pieces, abreast_mm: laid.abreast_mm }, settings);
  const sleeves = main.job === null ? [] : sleevesOf(route, main.job.barriers, laid.on_mm);
  const fittings = [
    { kind: "main-valve", pipe: laid.head } as const,
    ...runFittings(route, laid.runs),
    ...setValves(laid.runs),
    ...inPipe.fittings,
  ];
  const pushed = thrusts(pushedPlaces(fittings, ends), settings.testPressure_kpa, settings.soilBearing_kpa);
  const line = {
    rows,
    pipes: pieces,
    fittings,
    tees,
    lows: inPipe.lows,
    highs: inPipe.highs,
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
    lows: inPipe.lows,
    highs: inPipe.highs,
    conflicts: conflictsOf(main, route, rows, branches, bends, project),
    bends,
    pipes: pieces,
    isSized: pipes.length > 0,
    abreast_mm: laid.abreast_mm,
    thickest_mm: laid.thickest_mm,
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

/** The pipes lie under the cover asked for, and below the frost depth where that is known; the depth is that of the thickest everywhere. */
function layersOf({ cover_m, frostDepth_m, bedding_m }: TrenchInput["trench"], thickest_mm: number): Layers {
  return { cover_m: Math.max(cover_m, frostDepth_m ?? 0), outside_m: thickest_mm / 1000, bedding_m };
}

/** What all pipes on a leg take by bending. */
function stiffest_deg({ lines }: Laid, leg: number): number {
  return linesOn(lines, leg).reduce((least_deg, { pipe }) => Math.min(least_deg, flexed_deg(pipe)), Infinity);
}

function hoseOf(id: string | undefined, blocks: readonly Block[]): HoseSize {
  return blocks.find((block) => block.id === id)?.drip ?? usualHose;
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
