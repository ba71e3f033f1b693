import type { Finding } from "../../core/finding.ts";
import { text, type UnitSystem } from "../../core/units.ts";
import { inspectElevationFile } from "../../readers/inspect-elevation-file.ts";
import { readElevationFile } from "../../readers/read-elevation-file.ts";
import type { HeightAnswer, HeightQuestion } from "./height-messages.ts";
import { boxAround, coverOf, wantedBox } from "./wanted-box.ts";

/** Progress is told this often: more than anyone sees. */
const progressStep_ratio = 0.02;

/** Reads height files beside the page, by windows: a file may be larger than memory. */
addEventListener("message", ({ data }: MessageEvent<HeightQuestion>) => {
  void answerTo(data).then((answer) => postMessage(answer));
});

function answerTo(question: HeightQuestion): Promise<HeightAnswer> {
  return question.unit === null ? look(question) : read(question, question.unit);
}

async function look({ number, file, system, corners, units }: HeightQuestion): Promise<HeightAnswer> {
  const looked = await inspectElevationFile(file, file.name, system ?? undefined);
  const sentences = told(looked.findings, units);
  if (!looked.ok) return { number, kind: "refused", sentences };
  const { box } = looked.value;
  const cover = box && coverOf(box, boxAround(corners));
  return { number, kind: "about", about: { file: looked.value, cover, sentences } };
}

async function read(
  { number, file, system, corners, units }: HeightQuestion,
  verticalUnit: NonNullable<HeightQuestion["unit"]>,
): Promise<HeightAnswer> {
  let last_ratio = 0;
  const progress = (share_ratio: number): void => {
    if (share_ratio - last_ratio < progressStep_ratio) return;
    last_ratio = share_ratio;
    const answer: HeightAnswer = { number, kind: "progress", share_ratio };
    postMessage(answer);
  };
  const reading = {
    box: wantedBox(boxAround(corners)),
    verticalUnit,
    system: system ?? undefined,
    // The page knows which is free.
    id: "elevation",
    name: file.name,
  };
  const taken = await readElevationFile(file, reading, { progress });
  const sentences = told(taken.findings, units);
  return taken.ok ? { number, kind: "taken", grid: taken.value, sentences } : { number, kind: "refused", sentences };
}

function told(findings: readonly Finding[], units: UnitSystem): readonly string[] {
  return findings.map(({ message, remedy }) => `${text(message, units)} ${text(remedy, units)}`);
}
