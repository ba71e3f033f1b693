import type { RouteAnswer, StartRouteWorker } from "./route-messages.ts";

/** The worker that lays routes; its script is loaded with the first of them. */
export const startRouteWorker: StartRouteWorker = (tell) => {
  const worker = new Worker(new URL("./route-worker.ts", import.meta.url), { type: "module" });
  let number = 0;
  worker.onmessage = ({ data }: MessageEvent<RouteAnswer>) => tell(data);
  // A question it breaks on is not asked again: the plan is shown without a route.
  worker.onerror = () => tell({ number, route: null });
  return {
    ask: (question) => {
      number = question.number;
      worker.postMessage(question);
    },
    end: () => worker.terminate(),
  };
};
