import { withSetting } from "../core/project/edits.ts";
import type { Store } from "./store.ts";

export interface BenchHook {
  /** Milliseconds that each bearing took: the plan, and the edit before it. */
  planTimes(bearings: readonly number[]): { readonly plan_ms: number[]; readonly edit_ms: number[] };
  /** Milliseconds between frames while the map is kept repainting and nothing moves. */
  stillFrames(count: number): Promise<number[]>;
}

declare global {
  interface Window {
    /** Only with `?bench` in the address. */
    tautrowBench?: BenchHook;
  }
}

/** Lets the browser benchmark time the plan in the page itself. */
export function exposeBench(store: Store): void {
  window.tautrowBench = {
    planTimes: (bearings) => {
      const plan_ms: number[] = [];
      const edit_ms: number[] = [];
      for (const bearing of bearings) {
        const project = store.project.peek();
        if (!project) break;
        const begun = performance.now();
        const turned = withSetting(project, "rows.bearing", bearing);
        const edited = performance.now();
        if (!turned.ok) break;
        store.planner.plan(turned.value);
        plan_ms.push(performance.now() - edited);
        edit_ms.push(edited - begun);
      }
      return { plan_ms, edit_ms };
    },
    stillFrames: (count) =>
      new Promise((resolve) => {
        const times: number[] = [];
        const step = (time: number): void => {
          times.push(time);
          store.repaint.value += 1;
          if (times.length <= count) requestAnimationFrame(step);
          else resolve(times.slice(1).map((frame, i) => frame - (times[i] ?? frame)));
        };
        requestAnimationFrame(step);
      }),
  };
}
