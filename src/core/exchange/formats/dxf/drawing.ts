import type { AboutPart } from "../../about.ts";
import { featuresAChunk, type HandOverJob } from "../../format.ts";
import { aboutDrawn } from "./about-drawn.ts";
import { boxOf } from "./box.ts";
import { codePageBytes } from "./code-page.ts";
import { featureDrawn } from "./feature-drawn.ts";
import { groups } from "./group.ts";
import { opening } from "./opening.ts";

/** A whole drawing in the bytes of its code page, piece by piece. */
export function* drawing(job: HandOverJob, about: readonly AboutPart[]): Generator<Uint8Array> {
  for (const piece of drawingText(job, about)) yield codePageBytes(piece);
}

/**
 * The same as text. Its extent stands at the beginning, so that everything is gone through once before; that gives empty
 * pieces.
 */
function* drawingText(job: HandOverJob, about: readonly AboutPart[]): Generator<string> {
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
