import type { WaterPartKind } from "../drip/watering.ts";
import type { MaterialSettings } from "../project/project.ts";
import type { PartKind } from "../trellis/part.ts";
import type { TrenchPartKind } from "../trench/trench.ts";

/** Kinds of things on the list: those of a trellis, of a trench and of the water, wire runs, joins, and what drip and planting take. */
export type MaterialKind =
  | PartKind
  | TrenchPartKind
  | WaterPartKind
  | "wire"
  | "wire-join"
  | "hose"
  | "hose-join"
  | "hose-clip"
  | "emitter"
  | "vine";

/** What the catalog knows; parts of a trench and of the water bring their names with them. */
export type ListedKind = Exclude<MaterialKind, TrenchPartKind | WaterPartKind>;

/** Spare as a share of what is needed, or in pieces. */
export type SpareRule = { readonly ratio: number } | { readonly pieces: number };

/** What one asks for in a shop, and what is usual about buying it. */
export interface CatalogEntry {
  /** Name on the list. */
  readonly item: string;
  /** What it is for, a half sentence. */
  readonly use: string;
  spare(settings: MaterialSettings): SpareRule;
  /** Pieces in a package, where the price list names none. */
  pack(settings: MaterialSettings): number;
}

const none = () => ({ ratio: 0 });
const clips = ({ clipSpare_ratio }: MaterialSettings) => ({ ratio: clipSpare_ratio });
const grippers = ({ gripperSpare_ratio }: MaterialSettings) => ({ ratio: gripperSpare_ratio });
const single = () => 1;
const bagOfStaples = ({ stapleBag }: MaterialSettings) => stapleBag;

function entry(
  item: string,
  use: string,
  spare: CatalogEntry["spare"] = none,
  pack: CatalogEntry["pack"] = single,
): CatalogEntry {
  return { item, use, spare, pack };
}

/**
 * Everything that can stand on the list but what lies in a trench or has to do with the water, in the order it is worked with: ends and posts, wire and what holds it,
 * stakes, hose, vines.
 * Which spare applies to what is common practice, no source.
 */
export const catalog: Readonly<Record<ListedKind, CatalogEntry>> = {
  "end-post": entry("End posts", "one at each end of every row", ({ endPostSpare }) => ({ pieces: endPostSpare })),
  "brace-post": entry("Brace posts", "the second post of the brace at each row end"),
  "line-post": entry("Line posts", "between the end posts, they carry the wires", (settings) => ({
    ratio: settings.linePostSpare_ratio,
  })),
  "brace-rail": entry("Brace rails", "across, from end post to brace post"),
  "brace-strut": entry("Brace struts", "slanting, from the end post down to a foot inside the row"),
  "brace-pin": entry("Brace pins", "steel pins that hold rails and struts to their posts"),
  "brace-foot": entry("Strut feet", "flat stone or block under the lower end of each strut"),
  "brace-wire": entry("Brace wire", "between the feet and tops of a brace"),
  anchor: entry("Ground anchors", "beyond each end post, for the tie-back"),
  "buried-anchor": entry("Buried anchors", "log or block with a rod, dug in beyond each end post"),
  "tie-wire": entry("Tie-back wire", "from each end post to its anchor"),
  "tie-gripper": entry("Tie-back grippers", "close and tighten each tie-back", grippers),
  "concrete-bag": entry("Concrete, dry mix in bags", "sets the end posts"),
  wire: entry("Wire", "trellis wire"),
  "wire-join": entry("Wire joiners", "join two lengths of wire within a row", grippers),
  gripper: entry("Wire grippers", "end of a wire at an end post", grippers),
  "crimp-sleeve": entry("Crimp sleeves", "close a wire at an end post; need the crimping tool", grippers),
  tensioner: entry("In-line wire tensioners", "in the wire itself", grippers),
  "eye-bolt": entry("Eye bolts", "hold one wire each on a post", clips),
  staple: entry("Wire staples", "hold wires on wood posts", clips, bagOfStaples),
  "wire-clip": entry("Post clips", "hold wires in the notches of steel posts", clips, bagOfStaples),
  "wire-hook": entry("Wire hooks", "movable wires hang on them at line posts", clips),
  stake: entry("Training stakes", "beside the vines", ({ stakeSpare_ratio }) => ({ ratio: stakeSpare_ratio })),
  "stake-clip": entry(
    "Stake clips",
    "one where a stake meets a fruiting wire",
    clips,
    ({ stakeClipBag }) => stakeClipBag,
  ),
  hose: entry("Drip hose", "one lateral a row"),
  "hose-join": entry("Hose couplings", "join two lengths of hose within a row", grippers),
  "hose-clip": entry(
    "Hose clips",
    "hang the hose on the drip wire, one a gap between vines and one at each end",
    clips,
    ({ hoseClipBag }) => hoseClipBag,
  ),
  emitter: entry(
    "Emitters",
    "at the vines",
    ({ emitterSpare_ratio }) => ({ ratio: emitterSpare_ratio }),
    ({ emitterBag }) => emitterBag,
  ),
  vine: entry("Vines", "to plant"),
};

export function isListed(kind: MaterialKind): kind is ListedKind {
  return Object.hasOwn(catalog, kind);
}
