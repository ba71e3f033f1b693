import type { PlantingAnswer, StartPlantingWorker } from "./planting-messages.ts";

/** The worker that works planting areas out; its script is loaded with the first of them. */
export const startPlantingWorker: StartPlantingWorker = (tell) => {
  const worker = new Worker(new URL("./planting-worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<PlantingAnswer>) => tell(data);
  return { ask: (question) => worker.postMessage(question), end: () => worker.terminate() };
};
