import type { TrellisSettings } from "../project/project.ts";
import { lengthArticle, tieWireArticle } from "./article.ts";
import type { Part, PartCount, PartKind } from "./part.ts";
import { soldLength_m } from "./post-layout.ts";
import type { BlockTrellis, PostLayout } from "./trellis.ts";

/** Wire that fastening a tie-back or a brace wire takes, both its ends together. Common practice, no source. */
export const tieFastening_m = 1.2;
/** A brace wire goes there and back. */
const braceStrands = 2;

/** What one end of a row is built from, wires' tie-offs aside. Rails and struts are bought in the lengths that posts are sold in, and cut. */
export function endParts(
  { endPost, bracePost, end, concreteBags }: BlockTrellis,
  {
    endAssembly: settings,
    endPost: post,
    postLengths_m,
  }: Pick<TrellisSettings, "endAssembly" | "endPost" | "postLengths_m">,
): readonly PartCount[] {
  const wire = (kind: "tie-wire" | "brace-wire", quantity: number): PartCount => ({
    part: {
      article: tieWireArticle(settings.tieWire_mm),
      kind,
      unit: "m",
      length_m: null,
      diameter_mm: settings.tieWire_mm,
    },
    quantity,
  });
  const wood = (kind: "brace-rail" | "brace-strut", needed_m: number): PartCount => {
    const length_m = soldLength_m(needed_m, postLengths_m);
    const article = lengthArticle(kind, length_m);
    return { part: { article, kind, unit: "pieces", length_m, diameter_mm: post.diameter_mm }, quantity: 1 };
  };
  const { tie, brace } = end;
  const inside = brace === null ? 0 : brace.inside_m;
  return [
    { part: postPart("end-post", endPost), quantity: 1 },
    ...(tie === null
      ? []
      : [
          one(end.kind === "buried-anchor" ? "buried-anchor" : "anchor"),
          wire("tie-wire", tie.strands * tie.length_m + tieFastening_m),
          one("tie-gripper"),
        ]),
    ...(bracePost === null || brace === null
      ? []
      : [
          { part: postPart("brace-post", bracePost), quantity: 1 },
          wood("brace-rail", inside),
          { ...one("brace-pin"), quantity: 2 },
          wire("brace-wire", braceStrands * brace.diagonal_m + tieFastening_m),
          one("tie-gripper"),
        ]),
    ...(brace === null || bracePost !== null
      ? []
      : [wood("brace-strut", brace.diagonal_m), one("brace-pin"), one("brace-foot")]),
    ...(brace === null || end.kind !== "inside-brace"
      ? []
      : [wire("brace-wire", braceStrands * inside + tieFastening_m), one("tie-gripper")]),
    ...(concreteBags === 0 ? [] : [{ ...one("concrete-bag"), quantity: concreteBags }]),
  ];
}

/** A post or stake as a part. */
export function postPart(kind: PartKind, { article, length_m, diameter_mm }: PostLayout): Part {
  return { article, kind, unit: "pieces", length_m, diameter_mm };
}

/** One of a small part that comes in one kind only. */
export function one(kind: PartKind): PartCount {
  return { part: { article: kind, kind, unit: "pieces", length_m: null, diameter_mm: null }, quantity: 1 };
}
