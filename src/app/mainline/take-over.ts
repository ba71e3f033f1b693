import { batch } from "@preact/signals";
import { withoutThing, withThing } from "../../core/drawing/things.ts";
import type { Finding } from "../../core/finding.ts";
import { trunkOf } from "../../core/mainline/trunk.ts";
import { success } from "../../core/outcome.ts";
import { planePoint } from "../../core/plane/coordinate.ts";
import type { Project } from "../../core/project/project.ts";
import { edit } from "../commands/edit.ts";
import type { Store } from "../store.ts";

/** Makes the trunk of the route a main line that is drawn, in place of those that were, and selects it: one step. */
export function takeOverRoute(store: Store): readonly Finding[] {
  const plan = store.plan.peek();
  const [route, frame] = [plan?.mainline?.route ?? null, plan?.ground?.frame ?? null];
  if (route === null || frame === null) return [];
  const corners = trunkOf(route).map(([x_m, y_m]) => frame.toLonLat(planePoint(x_m, y_m)));
  let key = "";
  const findings = edit(store, { name: "Take the main line over to change it" }, (project) => {
    const made = withThing(withoutLines(project), { role: "main-line", shape: "line", corners });
    if (!made.ok) return made;
    key = made.value.key;
    return success(made.value.project, made.findings);
  });
  if (findings.length === 0) {
    batch(() => {
      store.drawing.isAwake.value = true;
      store.row.value = null;
      store.drawing.selected.value = key;
      store.drawing.said.value = "Main line taken over: drag its corners on the map.";
    });
  }
  return findings;
}

/** Takes every drawn main line away, so that the route is found again: one step. */
export function findAgain(store: Store): readonly Finding[] {
  return edit(store, { name: "Let the main line be found again" }, (project) => success(withoutLines(project), []));
}

function withoutLines(project: Project): Project {
  return project.mainLines.reduce((left, { key }) => {
    const next = withoutThing(left, key);
    return next.ok ? next.value : left;
  }, project);
}
