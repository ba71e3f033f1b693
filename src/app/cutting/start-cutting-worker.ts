import type { CuttingAnswer, StartCuttingWorker } from "./cutting-messages.ts";

/** The worker that works cutting plans out; its script is loaded with the first of them. */
export const startCuttingWorker: StartCuttingWorker = (tell) => {
  const worker = new Worker(new URL("./cutting-worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<CuttingAnswer>) => tell(data);
  return { ask: (question) => worker.postMessage(question), end: () => worker.terminate() };
};
