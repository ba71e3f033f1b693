import type { FeatureCollection } from "geojson";
import { type HandOverChoice, type Thing, usualChoice } from "../../src/core/exchange/choice.ts";
import type { Chunk } from "../../src/core/exchange/format.ts";
import { type HandOver, handOver } from "../../src/core/exchange/hand-over.ts";
import type { Plan } from "../../src/core/plan.ts";

/** The moment that files in tests are written at. */
export const writtenAt = "2026-11-26T06:00:00Z";

/** What a plan is handed over as, by a choice; throws when there is nothing to hand over. */
export function handedOver(plan: Plan, choice: Partial<HandOverChoice>): HandOver {
  const outcome = handOver(plan, { ...usualChoice, ...choice }, writtenAt);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ code }) => code).join(", "));
  return outcome.value;
}

/** Every file with its bytes; databases are not written here. */
export function bytesOf({ files }: HandOver | Pick<HandOver, "files">): Readonly<Record<string, Uint8Array>> {
  return Object.fromEntries(
    files.flatMap(({ name, content }) => (content.kind === "chunks" ? [[name, joined(content.chunks())]] : [])),
  );
}

/** Every file as text. */
export function textsOf(handed: HandOver): Readonly<Record<string, string>> {
  const decoder = new TextDecoder();
  return Object.fromEntries(Object.entries(bytesOf(handed)).map(([name, bytes]) => [name, decoder.decode(bytes)]));
}

/** Kinds of things of a plan as one GeoJSON collection, read back from its text. */
export function collectionOf(plan: Plan, of: readonly Thing[]): FeatureCollection {
  const [text = ""] = Object.values(textsOf(handedOver(plan, { as: "geojson", of, together: true })));
  return JSON.parse(text);
}

/** The lines of cells of a CSV table without quotes, the heads first. */
export function cellsOf(plan: Plan, of: Thing): readonly (readonly string[])[] {
  const text = textsOf(handedOver(plan, { as: "csv", of: [of] }))[`${of}.csv`] ?? "";
  return text
    .trimEnd()
    .split("\r\n")
    .map((line) => line.split(","));
}

function joined(chunks: Iterable<Chunk>): Uint8Array {
  const encoder = new TextEncoder();
  const pieces = Array.from(chunks, (chunk) => (typeof chunk === "string" ? encoder.encode(chunk) : chunk));
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
