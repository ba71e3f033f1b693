import type { StartWateringWorker, WateringAnswer } from "./watering-messages.ts";

/** The worker that works waterings out; its script is loaded with the first of them. */
export const startWateringWorker: StartWateringWorker = (tell) => {
  const worker = new Worker(new URL("./watering-worker.ts", import.meta.url), { type: "module" });
  let number = 0;
  worker.onmessage = ({ data }: MessageEvent<WateringAnswer>) => tell(data);
  // A question it breaks on is not asked again: the plan is shown without a watering.
  worker.onerror = () => tell({ number, watering: null });
  return {
    ask: (question) => {
      number = question.number;
      worker.postMessage(question);
    },
    end: () => worker.terminate(),
  };
};
