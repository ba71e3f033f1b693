import { cutCoils } from "../../core/materials/cutting/cut-coils.ts";
import type { CuttingAnswer, CuttingQuestion } from "./cutting-messages.ts";

/** Works cutting plans out beside the page: hundreds of rows take a good part of a second. */
addEventListener("message", ({ data }: MessageEvent<CuttingQuestion>) => {
  const answer: CuttingAnswer = { number: data.number, plans: data.jobs.map(cutCoils) };
  postMessage(answer);
});
