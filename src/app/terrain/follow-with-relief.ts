import { effect } from "@preact/signals";
import type { Store } from "../store.ts";
import { parcelCorners } from "./parcel-corners.ts";
import type { ReliefAnswer, ReliefWorker, StartReliefWorker } from "./relief-messages.ts";

/** What is drawn on: the layers of the map. */
export interface ReliefDrawing {
  show(relief: ReliefAnswer): void;
  remove(): void;
}

/**
 * Keeps shading and contours up to date: a worker is asked whenever heights or units are others, one question at a time and never while
 * something is held. Returns what stops it and takes them off the map.
 */
export function followWithRelief(store: Store, drawing: ReliefDrawing, startWorker: StartReliefWorker): () => void {
  let worker: ReliefWorker | null = null;
  let asked: { readonly inputs: readonly unknown[]; readonly number: number } | null = null;
  let shown: readonly unknown[] = [];
  let isGone = false;
  let number = 0;

  const tell = (answer: ReliefAnswer): void => {
    if (isGone || answer.number !== asked?.number) return;
    shown = asked.inputs;
    asked = null;
    drawing.show(answer);
    // What came in the meantime is asked for now.
    follow();
  };
  const follow = (): void => {
    const plan = store.plan.value;
    const units = store.units.value;
    if (store.drafting.value || !plan?.ground || asked !== null) return;
    const { elevation, frame } = plan.ground;
    const { parcels, spotHeights, heightGrids, ground } = plan.project;
    const inputs = [parcels, spotHeights, heightGrids, ground.heights, frame.origin.join(), units];
    if (elevation.kind === "flat" || inputs.every((input, i) => input === shown[i])) return;
    worker ??= startWorker(tell);
    asked = { inputs, number: ++number };
    worker.ask({ number, elevation, origin: frame.origin, corners: parcelCorners(parcels), units });
  };
  const stop = effect(follow);
  return () => {
    isGone = true;
    stop();
    worker?.end();
    drawing.remove();
  };
}
