import { waterRows } from "../../core/drip/water-rows.ts";
import type { WateringAnswer, WateringQuestion } from "./watering-messages.ts";

/** Waters large fields beside the page: a hundred thousand emitters take a good part of a second. */
addEventListener("message", ({ data }: MessageEvent<WateringQuestion>) => {
  const answer: WateringAnswer = { number: data.number, watering: waterRows(data.job) };
  postMessage(answer);
});
