import { failure, type Outcome, success } from "../core/outcome.ts";
import { breathe } from "./breathe.ts";
import { brokenFile } from "./file-findings.ts";
import { stopped } from "./findings.ts";
import type { NamedBytes, ReadingFollowed } from "./reading.ts";
import { type XmlStep, xmlSteps } from "./xml-steps.ts";

/** Steps between two moments in which a wish to stop can be heard. */
const stepsABreath = 20_000;

/** The bytes of a file, all of them. */
export async function wholeBytes(file: NamedBytes): Promise<Uint8Array> {
  return new Uint8Array(await file.slice(0, file.size).arrayBuffer());
}

/**
 * Goes through an XML text step by step, telling how far it has come. `take` gives false to go no further. Findings: `readers/broken-file`,
 * `readers/stopped`.
 */
export async function xmlFollowed(
  text: string,
  { name, title }: { readonly name: string; readonly title: string },
  { progress, signal }: ReadingFollowed,
  isWhole: (name: string, parents: readonly string[]) => boolean,
  take: (step: Exclude<XmlStep, { readonly kind: "broken" }>) => boolean,
): Promise<Outcome<null>> {
  const place = { at: 0 };
  let steps = 0;
  for (const step of xmlSteps(text, isWhole, place)) {
    if (step.kind === "broken") return failure([brokenFile(name, title, step.why)]);
    if (!take(step)) return success(null);
    steps++;
    if (steps % stepsABreath !== 0) continue;
    progress?.(place.at / text.length);
    await breathe();
    if (signal?.aborted === true) return failure([stopped(name)]);
  }
  return success(null);
}
