import { adviceOf } from "../../core/drip/advice.ts";
import { waterRows } from "../../core/drip/water-rows.ts";
import type { AdviceAnswer, AdviceQuestion } from "./advice-messages.ts";

/** Tries out what would help, beside the page: each thing is a watering of its own. */
addEventListener("message", ({ data: { job, watering } }: MessageEvent<AdviceQuestion>) => {
  const answer: AdviceAnswer = { advice: adviceOf(job, watering, waterRows) };
  postMessage(answer);
});
