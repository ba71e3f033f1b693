import type { Format, HandOverJob } from "../../../../src/core/exchange/format.ts";
import { textsOf } from "../../../support/handed-over.ts";

/** The files that a format writes of a job, as texts. */
export function writtenBy(format: Format, job: HandOverJob): Readonly<Record<string, string>> {
  return textsOf({ ...format.write(job), layers: job.layers, lists: [], names: job.names, system: job.system });
}

/** The only file that a format writes of a job. */
export function textOf(format: Format, job: HandOverJob): string {
  const [text = "", ...others] = Object.values(writtenBy(format, job));
  if (others.length > 0) throw new Error("more than one file was written");
  return text;
}
