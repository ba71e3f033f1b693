import type { HeightAnswer, StartHeightWorker } from "./height-messages.ts";

/** The worker that reads height files; its script, with the reader and all map projections, is loaded with the first of them. */
export const startHeightWorker: StartHeightWorker = (tell, failed) => {
  const worker = new Worker(new URL("./height-worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<HeightAnswer>) => tell(data);
  worker.onerror = failed;
  return { ask: (question) => worker.postMessage(question), end: () => worker.terminate() };
};
