import type { EndAssemblySettings, PostSettings, StakeSettings, TieOff, TrellisSettings, Wire } from "./project.ts";
import type { trellisSection } from "./schema.ts";
import type { Stated } from "./schema-parts.ts";
import { usualWire } from "./usual-wire.ts";

type TrellisStated = Stated<typeof trellisSection>;
type WireStated = NonNullable<TrellisStated["wires"]>[number];
type TieOffStated = NonNullable<TrellisStated["tieOffStart"]>;

/** What a block states over what the project states: member by member within posts, stakes and end assemblies. */
export function trellisOver(project: TrellisStated, block: TrellisStated): TrellisStated {
  const over = <T extends "endAssembly" | "endPost" | "linePost" | "stake">(name: T) =>
    project[name] === undefined && block[name] === undefined ? {} : { [name]: { ...project[name], ...block[name] } };
  return {
    ...project,
    ...block,
    ...over("endAssembly"),
    ...over("endPost"),
    ...over("linePost"),
    ...over("stake"),
  };
}

/** Trellis of a block, over what is usual; a wire without a diameter is of the usual one and ends as the block's wires do. */
export function trellisSettings(stated: TrellisStated, usual: TrellisSettings): TrellisSettings {
  const tieOffStart = tieOff(stated.tieOffStart, usual.tieOffStart);
  const tieOffEnd = tieOff(stated.tieOffEnd, usual.tieOffEnd);
  const ends = { tieOffStart, tieOffEnd };
  const diameter_mm = usual.wires[0]?.diameter_mm ?? 0;
  return {
    wires:
      stated.wires?.map((wire) => wireSettings(wire, diameter_mm, ends)) ??
      usual.wires.map((wire) => ({ ...wire, ...ends })),
    ...ends,
    endAssembly: endAssembly(stated.endAssembly ?? {}, usual.endAssembly),
    endPost: post(stated.endPost ?? {}, usual.endPost),
    linePost: post(stated.linePost ?? {}, usual.linePost),
    stake: stake(stated.stake ?? {}, usual.stake),
    stakesPerVine: stated.stakesPerVine ?? usual.stakesPerVine,
    postLengths_m: stated.postLengths ?? usual.postLengths_m,
    stakeLengths_m: stated.stakeLengths ?? usual.stakeLengths_m,
    frostDepth_m: stated.frostDepth ?? usual.frostDepth_m,
    cropPerVine_kg: stated.cropPerVine ?? usual.cropPerVine_kg,
    tensionedAt_c: stated.tensionedAt ?? usual.tensionedAt_c,
    coldest_c: stated.coldest ?? usual.coldest_c,
    hottest_c: stated.hottest ?? usual.hottest_c,
    anchorCapacity_n: stated.anchorCapacity ?? usual.anchorCapacity_n,
    leastClearance_m: stated.leastClearance ?? usual.leastClearance_m,
    warnShare_ratio: stated.warnShare ?? usual.warnShare_ratio,
    mostShare_ratio: stated.mostShare ?? usual.mostShare_ratio,
  };
}

/** A tie-off may state one of its two members; another kind does not keep the usual kind's allowance. */
function tieOff(stated: TieOffStated | undefined, usual: TieOff): TieOff {
  const kind = stated?.kind ?? usual.kind;
  return { kind, allowance_m: stated?.allowance ?? (kind === usual.kind ? usual.allowance_m : null) };
}

function wireSettings(stated: WireStated, usual_mm: number, ends: Pick<Wire, "tieOffStart" | "tieOffEnd">): Wire {
  const { purpose, height, diameter, count, movable, tensile, coating, tension, tensioners } = stated;
  return usualWire(
    {
      purpose,
      height_m: height,
      diameter_mm: diameter ?? usual_mm,
      ...(count !== undefined && { count }),
      ...(movable !== undefined && { isMovable: movable }),
      ...(tensile !== undefined && { tensile }),
      ...(coating !== undefined && { coating }),
      ...(tension !== undefined && { tension_n: tension }),
      ...(tensioners !== undefined && { tensioners }),
    },
    { tieOffStart: tieOff(stated.tieOffStart, ends.tieOffStart), tieOffEnd: tieOff(stated.tieOffEnd, ends.tieOffEnd) },
  );
}

function endAssembly(
  stated: NonNullable<TrellisStated["endAssembly"]>,
  usual: EndAssemblySettings,
): EndAssemblySettings {
  return {
    kind: stated.kind ?? usual.kind,
    postAngle_deg: stated.postAngle ?? usual.postAngle_deg,
    leanDirection: stated.leanDirection ?? usual.leanDirection,
    tieHeight_m: stated.tieHeight ?? usual.tieHeight_m,
    braceHeight_m: stated.braceHeight ?? usual.braceHeight_m,
    braceLength_m: stated.braceLength ?? usual.braceLength_m,
    tieWire_mm: stated.tieWire ?? usual.tieWire_mm,
    tieStrands: stated.tieStrands ?? usual.tieStrands,
    // A hole of no width says that there is no concrete.
    concreteHole_m: stated.concreteHole === 0 ? null : (stated.concreteHole ?? usual.concreteHole_m),
    concreteBag_l: stated.concreteBag ?? usual.concreteBag_l,
  };
}

function post(stated: NonNullable<TrellisStated["endPost"]>, usual: PostSettings): PostSettings {
  return {
    holds: stated.holds ?? usual.holds,
    diameter_mm: stated.diameter ?? usual.diameter_mm,
    embedment_m: stated.embedment ?? usual.embedment_m,
    above_m: stated.above ?? usual.above_m,
    length_m: stated.length ?? usual.length_m,
    firstNotch_m: stated.firstNotch ?? usual.firstNotch_m,
    notchPitch_m: stated.notchPitch ?? usual.notchPitch_m,
  };
}

function stake(stated: NonNullable<TrellisStated["stake"]>, usual: StakeSettings): StakeSettings {
  return {
    embedment_m: stated.embedment ?? usual.embedment_m,
    above_m: stated.above ?? usual.above_m,
    length_m: stated.length ?? usual.length_m,
  };
}
