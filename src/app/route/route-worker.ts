import { layRoute } from "../../core/mainline/lay-route.ts";
import type { RouteAnswer, RouteQuestion } from "./route-messages.ts";

/** Lays routes beside the page: hundreds of rows among obstacles take a good part of a second. */
addEventListener("message", ({ data }: MessageEvent<RouteQuestion>) => {
  const answer: RouteAnswer = { number: data.number, route: layRoute(data.job) };
  postMessage(answer);
});
