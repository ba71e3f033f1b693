import { drawingFrame } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";
import type { Project } from "../../core/project/project.ts";
import type { Store } from "../store.ts";

let last: { readonly project: Project; readonly near: LonLat; readonly frame: Frame } | null = null;

/** The plane that drawing measures in: the plan's, else one around a place. Made anew only when there is a reason. */
export function frameNear(store: Store, near: LonLat): Frame | null {
  const ground = store.plan.peek()?.ground ?? null;
  if (ground) return ground.frame;
  const project = store.project.peek();
  if (!project) return null;
  const isSame = last !== null && last.project === project && last.near[0] === near[0] && last.near[1] === near[1];
  if (!last || !isSame) last = { project, near, frame: drawingFrame(project, near) };
  return last.frame;
}
