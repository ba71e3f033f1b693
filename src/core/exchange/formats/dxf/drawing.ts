import type { AboutPart } from "../../about.ts";
import { featuresAChunk, type HandOverJob } from "../../format.ts";
import { aboutDrawn } from "./about-drawn.ts";
import { boxOf } from "./box.ts";
import { featureDrawn } from "./feature-drawn.ts";
import { groups } from "./group.ts";
import { opening } from "./opening.ts";

/**
 * A whole drawing, piece by piece. Its extent stands at the beginning, so that everything is gone through once before; that gives empty
 * pieces.
 */
export function* drawing(job: HandOverJob, about: readonly AboutPart[]): Generator<string> {
  const box = yield* boxOf(job);
  yield opening(job, box);
  yield aboutDrawn(job, about, box);
  const drawn = featureDrawn(job);
  for (const layer of job.layers) {
    let chunk = "";
    let count = 0;
    for (const feature of layer.features()) {
      chunk += drawn(layer, feature);
      if (++count % featuresAChunk !== 0) continue;
      yield chunk;
      chunk = "";
    }
    yield chunk;
  }
  yield groups([0, "ENDSEC"], [0, "EOF"]);
}
