import { type Phrase, quantity, say } from "../finding.ts";
import type { Block, Coating, TensileClass, Wire, WireHold } from "../project/project.ts";
import type { Part } from "../trellis/part.ts";
import type { Trellis } from "../trellis/trellis.ts";

/** Dry mix in a litre of what it gives, kg: bags of 60 lb give 0.45 cubic feet. Common practice, no source. */
const dryMix_kgpl = 2.14;

const strengths: Readonly<Record<TensileClass, string>> = {
  unknown: "low carbon or stronger",
  "low-carbon": "low carbon",
  "grade-140": "high tensile, grade 140",
  "grade-180": "high tensile, grade 180",
  "grade-200": "high tensile, grade 200",
};

const zincs: Readonly<Record<Coating, string>> = {
  unknown: "galvanized, any class",
  bare: "without zinc",
  "class-1": "galvanized, class 1",
  "class-3": "galvanized, class 3",
};

/** Which wire to ask for: thickness, strength and zinc. What is not known says what will do. */
export function wireSpec({ diameter_mm, tensile, coating }: Pick<Wire, "diameter_mm" | "tensile" | "coating">): Phrase {
  return say`${quantity("diameter", diameter_mm)}, ${strengths[tensile]}, ${zincs[coating]}`;
}

/** Which part to ask for: length and thickness, what it is made of, what it has to fit. */
export function partSpec(part: Part, trellis: Trellis, blocks: readonly Block[]): Phrase {
  const { unit, length_m, diameter_mm } = part;
  if (unit === "m" && diameter_mm !== null) return wireSpec({ diameter_mm, tensile: "unknown", coating: "unknown" });
  const all: readonly Phrase[] = [
    length_m === null ? [] : say`${quantity("length", length_m)} long`,
    diameter_mm === null ? [] : say`${quantity("diameter", diameter_mm)} thick`,
    fitting(part, trellis, blocks),
  ];
  return all.filter((phrase) => phrase.length > 0).flatMap((phrase, i) => (i === 0 ? phrase : [", ", ...phrase]));
}

const posts: Readonly<Record<WireHold, string>> = {
  staple: "treated wood",
  "eye-bolt": "treated wood",
  notch: "steel, with notches for wire",
  hole: "with a drilled hole for each wire",
};

/** What the part is made of and what it has to fit. */
function fitting({ kind, article }: Part, trellis: Trellis, blocks: readonly Block[]): Phrase {
  switch (kind) {
    case "end-post":
    case "line-post":
      return [
        holdsOf(article, kind, trellis, blocks)
          .map((holds) => posts[holds])
          .join(" or "),
      ];
    case "brace-post":
      return ["treated wood"];
    case "brace-rail":
    case "brace-strut":
      return ["treated wood, cut to fit"];
    case "brace-pin":
      return ["galvanized steel rod, long enough to reach well into both posts"];
    case "brace-foot":
      return ["flat stone or concrete block"];
    case "stake":
      // Thickness: common practice, no source.
      return ["steel rod of about 3/8 in (10 mm), or wood of about 1 in (25 mm)"];
    case "stake-clip":
      return [...wiresOf(blocks, ({ purpose }) => purpose === "fruiting"), ", on stakes as thick as those bought"];
    case "staple":
      // Length: common practice, no source.
      return ["galvanized, 1 1/2 in (38 mm) or longer"];
    case "wire-clip":
      return [...wiresOf(blocks, () => true), ", by the maker of the posts"];
    case "wire-hook":
      return wiresOf(blocks, ({ isMovable }) => isMovable);
    case "eye-bolt":
      return ["galvanized, with nut and washer, longer than the post is thick"];
    case "gripper":
      return wiresOf(blocks, ({ tieOffStart, tieOffEnd }) => [tieOffStart.kind, tieOffEnd.kind].includes("gripper"));
    case "crimp-sleeve":
      return wiresOf(blocks, ({ tieOffStart, tieOffEnd }) => [tieOffStart.kind, tieOffEnd.kind].includes("crimp"));
    case "tensioner":
      return [...wiresOf(blocks, ({ tensioners }) => tensioners > 0), ", ratchet"];
    case "tie-gripper":
      return forWire(blocks.map(({ trellis: { endAssembly } }) => endAssembly.tieWire_mm));
    case "concrete-bag":
      return say`each gives about ${quantity("volume", Math.max(...blocks.map((block) => block.trellis.endAssembly.concreteBag_l)))}`;
    case "anchor":
    case "buried-anchor":
      return anchorWords(trellis);
    case "tie-wire":
    case "brace-wire":
      return [];
    default:
      return kind satisfies never;
  }
}

function holdsOf(article: string, kind: "end-post" | "line-post", trellis: Trellis, blocks: readonly Block[]) {
  const own = trellis.blocks.filter((each) => (kind === "end-post" ? each.endPost : each.linePost).article === article);
  const holds = own.flatMap(({ block: id }) => {
    const block = blocks.find((each) => each.id === id);
    return block === undefined ? [] : [(kind === "end-post" ? block.trellis.endPost : block.trellis.linePost).holds];
  });
  return [...new Set(holds)];
}

/** The pull that an anchor gets is told; how to hold it is for the place to say. */
function anchorWords({ loads }: Trellis): Phrase {
  const pull_n = loads.blocks.reduce((most_n, { end }) => Math.max(most_n, end.tie_n ?? 0), 0);
  const local = "type, size and depth by local soil and practice";
  return pull_n > 0 ? say`the tie-back pulls up to ${quantity("force", pull_n)} in the cold; ${local}` : [local];
}

function wiresOf(blocks: readonly Block[], wanted: (wire: Wire) => boolean): Phrase {
  return forWire(blocks.flatMap(({ trellis }) => trellis.wires.filter(wanted).map(({ diameter_mm }) => diameter_mm)));
}

/** "for wire of 13 ga and 12.5 ga" */
function forWire(diameters_mm: readonly number[]): Phrase {
  return [...new Set(diameters_mm)].flatMap((diameter_mm, i) => [
    i === 0 ? "for wire of " : " and ",
    quantity("diameter", diameter_mm),
  ]);
}

/** What a wire join has to fit. */
export function joinSpec(blocks: readonly Block[]): Phrase {
  return wiresOf(blocks, () => true);
}

/** Mass of the largest bag that a block uses, kg. */
export function concreteBag_kg(blocks: readonly Block[]): number {
  return blocks.reduce((most_kg, { trellis }) => Math.max(most_kg, trellis.endAssembly.concreteBag_l * dryMix_kgpl), 0);
}
