import type { Overlay, PlantingParts } from "../../core/plane/overlay.ts";

/** What the page asks its worker. */
export interface PlantingQuestion {
  readonly number: number;
  readonly parts: PlantingParts;
}

/** What the worker answers to the question of the same number. */
export interface PlantingAnswer {
  readonly number: number;
  readonly area: Overlay;
  readonly took_ms: number;
}

/** Someone to ask, one question after another. */
export interface PlantingWorker {
  ask(question: PlantingQuestion): void;
  /** Ends it, whatever it is at. */
  end(): void;
}

/** Starts a worker that tells its answers. */
export type StartPlantingWorker = (tell: (answer: PlantingAnswer) => void) => PlantingWorker;
