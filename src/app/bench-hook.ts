import { withSetting } from "../core/project/edits.ts";
import { frameTimes } from "./frame-times.ts";
import type { Store } from "./store.ts";

export interface BenchHook {
  /** Milliseconds that each bearing took: the plan, and the edit before it. */
  planTimes(bearings: readonly number[]): { readonly plan_ms: number[]; readonly edit_ms: number[] };
  /** Milliseconds between frames while the map is kept repainting and nothing moves. */
  stillFrames(frames: number): Promise<number[]>;
  /** The same while the held handle is moved about a place before every frame. */
  dragFrames(frames: number, x: number, y: number): Promise<number[]>;
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
    stillFrames: (frames) =>
      frameTimes(frames, () => {
        store.repaint.value += 1;
      }),
    dragFrames: (frames, x, y) => {
      const knob = document.querySelector(".tautrow-handle-knob");
      return frameTimes(frames, (frame) => {
        const at = { clientX: x + 160 * Math.sin(frame / 25), clientY: y + 30 * (1 - Math.cos(frame / 25)) };
        knob?.dispatchEvent(new PointerEvent("pointermove", { pointerId: 1, bubbles: true, ...at }));
      });
    },
  };
}
