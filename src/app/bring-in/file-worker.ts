import type { Finding } from "../../core/finding.ts";
import { text, type UnitSystem } from "../../core/units.ts";
import { readFile } from "../../readers/read-file.ts";
import type { FileAnswer, FileQuestion } from "./bring-in-messages.ts";

/** Progress is told this often: more than anyone sees. */
const progressStep_ratio = 0.02;
/** More things than this are not shown to choose from: handing them over would hold the page up. */
const mostThings = 20_000;

/** Reads files of other formats beside the page. */
addEventListener("message", ({ data }: MessageEvent<FileQuestion>) => {
  void answerTo(data).then((answer) => postMessage(answer));
});

async function answerTo({ number, file, answers, units }: FileQuestion): Promise<FileAnswer> {
  let last_ratio = 0;
  const progress = (share_ratio: number): void => {
    if (share_ratio - last_ratio < progressStep_ratio) return;
    last_ratio = share_ratio;
    const answer: FileAnswer = { number, kind: "progress", share_ratio };
    postMessage(answer);
  };
  const outcome = await readFile(file, answers, { progress });
  const sentences = told(outcome.findings, units);
  if (!outcome.ok) return { number, kind: "refused", sentences };
  const count = outcome.value.features.length;
  if (count > mostThings) {
    const many = `It holds ${count.toLocaleString("en-US")} things, and at most ${mostThings.toLocaleString("en-US")} are shown to choose from. Have only the ground around the parcel written to a file; vines and posts are worked out by the plan itself.`;
    return { number, kind: "refused", sentences: [many] };
  }
  return { number, kind: "found", found: outcome.value, sentences };
}

function told(findings: readonly Finding[], units: UnitSystem): readonly string[] {
  return findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`);
}
