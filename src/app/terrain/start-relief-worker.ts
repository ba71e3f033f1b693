import type { ReliefAnswer, StartReliefWorker } from "./relief-messages.ts";

/** The worker that works shading and contours out; its script is loaded with the first of them. */
export const startReliefWorker: StartReliefWorker = (tell) => {
  const worker = new Worker(new URL("./relief-worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<ReliefAnswer>) => tell(data);
  return { ask: (question) => worker.postMessage(question), end: () => worker.terminate() };
};
