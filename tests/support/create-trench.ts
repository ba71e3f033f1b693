import type { PipeLine } from "../../src/core/drip/watering.ts";
import type { Finding } from "../../src/core/finding.ts";
import { elevationOf } from "../../src/core/ground/elevation.ts";
import type { Ground } from "../../src/core/ground/ground.ts";
import type { Route } from "../../src/core/mainline/route.ts";
import { routeJob } from "../../src/core/mainline/route-job.ts";
import type { Mainline } from "../../src/core/mainline/water-end.ts";
import { createPlanner } from "../../src/core/planner.ts";
import type { Project, TrenchSettings } from "../../src/core/project/project.ts";
import type { Rows } from "../../src/core/rows/rows.ts";
import { trellis } from "../../src/core/trellis/lay-trellis.ts";
import { trench } from "../../src/core/trench/dig-trench.ts";
import type { Trench } from "../../src/core/trench/trench.ts";
import { at, createProject, testFrame } from "./create-project.ts";
import { routePastStarts } from "./create-route.ts";
import { createBlock, createRows } from "./create-rows.ts";

interface TrenchSketch {
  readonly rows?: Rows;
  readonly route?: Route;
  /** Places with their heights; none: flat ground. */
  readonly heights?: readonly (readonly [x_m: number, y_m: number, height_m: number])[];
  readonly trench?: Partial<TrenchSettings>;
  readonly project?: Partial<Project>;
  /** As a watering chooses them; none: the pipe that is set. */
  readonly pipes?: readonly PipeLine[];
}

export interface DugTrench {
  readonly dug: Trench;
  readonly findings: readonly Finding[];
  readonly rows: Rows;
  readonly project: Project;
  readonly main: Mainline;
}

/**
 * A trench along a route by hand. Usual: five rows of 60 m due north, 3 m apart, anchors 1.5 m out, the trench 1 m past them on flat
 * ground, at the metric defaults.
 */
export function createTrench(sketch: TrenchSketch = {}): DugTrench {
  const rows =
    sketch.rows ?? createRows(...Array.from({ length: 5 }, () => ({ length_m: 60, vines: 30, linePosts: 8 })));
  const usual = createProject({
    sources: [{ key: "well", name: "Well", at: at([-10, -2.5]) }],
    blocks: [createBlock()],
  });
  const project: Project = { ...usual, ...sketch.project, trench: { ...usual.trench, ...sketch.trench } };
  const ground = groundOf(project, sketch.heights ?? []);
  const route = sketch.route ?? routePastStarts(rows, 2.5);
  const main: Mainline = { waterEnd: route.waterEnd, job: routeJob(rows, ground, project), route };
  const structure = trellis(rows, ground.elevation, project.blocks);
  if (!structure.ok) throw new Error("the trellis is not laid");
  const outcome = trench(main, rows, ground, structure.value, sketch.pipes ?? [], project);
  if (outcome === null || !outcome.ok) throw new Error("the trench is not dug");
  return { dug: outcome.value, findings: outcome.findings, rows, project, main };
}

function groundOf(project: Project, heights: NonNullable<TrenchSketch["heights"]>): Ground {
  const { ground } = createPlanner().plan({ ...project, sources: [] });
  if (ground === null) throw new Error("the test ground is not laid");
  const spots = heights.map(([x, y, height_m], i) => ({ key: `spot-${i}`, name: null, at: at([x, y]), height_m }));
  return { ...ground, elevation: elevationOf(spots, testFrame).elevation };
}
