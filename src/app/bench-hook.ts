import type { Map as MapLibreMap } from "maplibre-gl";
import { withCornerMoved } from "../core/drawing/corners.ts";
import { lonLat } from "../core/plane/coordinate.ts";
import { withSetting } from "../core/project/edits.ts";
import { observeLongTasks, type Watched, watchPage } from "./bench-watch.ts";
import { changeSetting } from "./commands/change-setting.ts";
import { draft, dropDraft } from "./commands/edit.ts";
import { frameTimes } from "./frame-times.ts";
import { panFrames } from "./pan-frames.ts";
import type { Store } from "./store.ts";

/** What was seen on the map while something was held. */
export interface LayoutsSeen {
  /** Distinct layouts of rows that were drawn. */
  readonly layouts: number;
  readonly frames: number;
  readonly time_ms: number;
  /** Tasks of the page that took longer than 50 ms. */
  readonly longTasks_ms: number[];
}

export interface BenchHook {
  /** The page's map, once there is one. */
  map: MapLibreMap | null;
  /** Rows and vines of the shown plan. */
  counts(): { readonly rows: number; readonly vines: number; readonly corners: number };
  /** Milliseconds that each bearing took: the plan, and the edit before it. */
  planTimes(bearings: readonly number[]): { readonly plan_ms: number[]; readonly edit_ms: number[] };
  /** Milliseconds from each flow of an emitter being set to everything that follows of it being known and handed to map and lists. */
  emitterTimes(flows: readonly string[]): Promise<number[]>;
  /** Milliseconds between frames while the map is kept repainting and nothing moves. */
  stillFrames(frames: number): Promise<number[]>;
  /** Milliseconds between frames while the map is moved a little before every one. */
  panFrames(frames: number): Promise<number[]>;
  /** Milliseconds between frames while the held handle is moved about a place before every frame. */
  dragFrames(frames: number, x: number, y: number): Promise<number[]>;
  /** The same, counting layouts. */
  dragLayouts(frames: number, x: number, y: number): Promise<LayoutsSeen>;
  /** Drags a corner of the first parcel's outline about its place, counting layouts. */
  cornerLayouts(frames: number, corner: number): Promise<LayoutsSeen>;
  /** Tasks over 50 ms in the next while. */
  longTasks(while_ms: number): Promise<number[]>;
  /** Begins to watch tasks and frames; `watched` ends it. */
  watch(): void;
  watched(): Watched | null;
}

declare global {
  interface Window {
    /** Only with `?bench` in the address. */
    tautrowBench?: BenchHook;
  }
}

/** Degrees of a corner's way from its place, some 5 m. */
const cornerReach_deg = 5e-5;

/** Lets the browser benchmark time the page from within. */
export function exposeBench(store: Store): void {
  const turnHandle = (x: number, y: number) => {
    const knob = document.querySelector(".tautrow-handle-knob");
    return (frame: number): void => {
      const at = { clientX: x + 160 * Math.sin(frame / 25), clientY: y + 30 * (1 - Math.cos(frame / 25)) };
      knob?.dispatchEvent(new PointerEvent("pointermove", { pointerId: 1, bubbles: true, ...at }));
    };
  };
  let endWatch: (() => Watched) | null = null;
  const bench: BenchHook = {
    map: null,
    counts: () => {
      const plan = store.plan.peek();
      return {
        rows: plan?.rows?.rows.length ?? 0,
        vines: plan?.rows?.vines.station_m.length ?? 0,
        corners: plan?.project.parcels[0]?.polygons[0]?.[0]?.length ?? 0,
      };
    },
    planTimes: (bearings) => planTimes(store, bearings),
    emitterTimes: (flows) => emitterTimes(store, flows),
    stillFrames: (frames) =>
      frameTimes(frames, () => {
        store.repaint.value += 1;
      }),
    panFrames: (frames) => (bench.map ? panFrames(bench.map, frames) : Promise.resolve([])),
    dragFrames: (frames, x, y) => frameTimes(frames, turnHandle(x, y)),
    dragLayouts: (frames, x, y) => layoutsSeen(store, bench.map, frames, turnHandle(x, y)),
    cornerLayouts: async (frames, corner) => {
      const parcel = store.project.peek()?.parcels[0];
      const at = parcel?.polygons[0]?.[0]?.[corner];
      if (!parcel || !at) throw new Error("there is no such corner");
      const ref = { key: parcel.key, path: 0, corner };
      const seen = await layoutsSeen(store, bench.map, frames, (frame) => {
        const [east, north] = [Math.sin(frame / 9), Math.cos(frame / 9)];
        const to = lonLat(at[0] + cornerReach_deg * east, at[1] + cornerReach_deg * north);
        draft(store, (project) => withCornerMoved(project, ref, to));
      });
      dropDraft(store);
      return seen;
    },
    longTasks: async (while_ms) => {
      const stop = observeLongTasks();
      await new Promise((resolve) => setTimeout(resolve, while_ms));
      return stop();
    },
    watch: () => {
      endWatch = watchPage();
    },
    watched: () => endWatch?.() ?? null,
  };
  window.tautrowBench = bench;
}

function planTimes(store: Store, bearings: readonly number[]): { plan_ms: number[]; edit_ms: number[] } {
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
}

/** Between two edits, so that cutting plans and lists have settled. */
const pause_ms = 250;

async function emitterTimes(store: Store, flows: readonly string[]): Promise<number[]> {
  const times_ms: number[] = [];
  for (const flow of flows) {
    await new Promise((resolve) => setTimeout(resolve, pause_ms));
    const before = store.plan.peek()?.watering?.watering;
    const begun = performance.now();
    changeSetting(store, "drip.emitterFlow", flow);
    times_ms.push(performance.now() - begun);
    const after = store.plan.peek()?.watering?.watering;
    if (!after || after === before || after.sets.length === 0) throw new Error("nothing was watered anew");
  }
  return times_ms;
}

/** Counts the layouts that the map drew while something moved before every frame. */
async function layoutsSeen(
  store: Store,
  map: MapLibreMap | null,
  frames: number,
  move: (frame: number) => void,
): Promise<LayoutsSeen> {
  if (!map) throw new Error("there is no map");
  const drawn = new Set<unknown>();
  const see = (): void => {
    drawn.add(store.plan.peek()?.rows ?? null);
  };
  const stop = observeLongTasks();
  map.on("render", see);
  const times = await frameTimes(frames, move);
  map.off("render", see);
  return { layouts: drawn.size, frames, time_ms: times.reduce((sum, time) => sum + time, 0), longTasks_ms: stop() };
}
