import type { FileAnswer, StartFileWorker } from "./bring-in-messages.ts";

/** The worker that reads files of other formats; its script, with the readers, is loaded with the first of them. */
export const startFileWorker: StartFileWorker = (tell, failed) => {
  const worker = new Worker(new URL("./file-worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<FileAnswer>) => tell(data);
  worker.onerror = failed;
  return { ask: (question) => worker.postMessage(question), end: () => worker.terminate() };
};
