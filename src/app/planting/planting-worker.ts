import { plantingArea } from "../../core/plane/overlay.ts";
import type { PlantingAnswer, PlantingQuestion } from "./planting-messages.ts";

/** Works planting areas out beside the page: thousands of corners take seconds. */
addEventListener("message", ({ data }: MessageEvent<PlantingQuestion>) => {
  const begun = performance.now();
  const area = plantingArea(data.parts);
  const answer: PlantingAnswer = { number: data.number, area, took_ms: performance.now() - begun };
  postMessage(answer);
});
