import type { Feature, MultiLineString, Polygon } from "geojson";
import { freeKey } from "../../core/drawing/things.ts";
import { type Outcome, success } from "../../core/outcome.ts";
import { withFeature, withoutFeature } from "../../core/project/edits.ts";
import type { Project } from "../../core/project/project.ts";
import { text } from "../../core/units.ts";
import { edit } from "../commands/edit.ts";
import type { Store } from "../store.ts";
import { showReliefAtFirst } from "./relief-choice.ts";

/** A grid of heights, or tracks with heights. */
export type HeightFeature = Feature<Polygon | MultiLineString>;

/** Puts the heights of a file into the project, in place of an earlier file's, as one step. Says why not, or gives an empty list. */
export function takeHeights(store: Store, file: string, grid: HeightFeature): readonly string[] {
  const units = store.units.peek();
  const findings = edit(store, { name: `Heights from ${file}` }, (project) => withHeights(project, grid));
  if (findings.length === 0) showReliefAtFirst();
  return findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`);
}

/** Takes all heights out of the project as one step: the ground counts as flat again. */
export function takeHeightsOut(store: Store): void {
  edit(store, { name: "Take the heights out" }, (project) => {
    const things = [...project.heightGrids, ...project.spotHeights];
    const keys = new Set(things.map(({ key }) => key));
    const left = [...keys].reduce(withoutFeature, project);
    return success(left, left.findings);
  });
}

function withHeights(project: Project, grid: HeightFeature): Outcome<Project> {
  const cleared = project.heightGrids.reduce((rest, { key }) => withoutFeature(rest, key), project);
  const next = withFeature(cleared, { ...grid, id: freeKey(cleared, "elevation") });
  return success(next, next.findings);
}
