import type { Finding } from "../finding.ts";
import type { Ground } from "../ground/ground.ts";
import { planePoint } from "../plane/coordinate.ts";
import type { TrenchSettings } from "../project/project.ts";
import { usualCover_m } from "../project/usual-cover.ts";
import type { Rows } from "../rows/rows.ts";
import { cautions } from "./cautions.ts";
import {
  frostGoverns,
  frostUnknown,
  groundLevel,
  groundUnknown,
  lowPoint,
  nearAnchors,
  nearPosts,
  noTurningRoom,
  rockBedding,
  shallowCover,
  tooNarrow,
} from "./findings.ts";
import type { LaneConflict, Profile, Trench } from "./trench.ts";
import { abreast_m, toolWidths } from "./trench-width.ts";

/** In rock pipe lies on at least this: 4 in (NRCS conservation practice standard 430). */
const rockBedding_m = 0.1016;
/** A millimetre is no reason for a word. */
const slack_m = 1e-3;

/**
 * What there is to say about a trench. Findings: trench/ground-unknown, trench/ground-level, trench/low-point, trench/near-posts,
 * trench/near-anchors, trench/no-turning-room, trench/too-narrow, trench/shallow-cover, trench/frost-governs, trench/frost-unknown,
 * trench/rock-bedding, and those of `cautions`.
 */
export function trenchFindings(
  trench: Trench,
  rows: Rows,
  { frame, elevation }: Pick<Ground, "frame" | "elevation">,
  settings: TrenchSettings,
): readonly Finding[] {
  const at = ([x, y]: readonly [number, number]) => frame.toLonLat(planePoint(x, y));
  const first = trench.profiles[0];
  if (first === undefined) return [];
  const source = at([Number(first.xy[0]), Number(first.xy[1])]);
  const deepest = at(trench.earth.deepestAt);
  const unknown = unknownGround(trench.profiles);
  const drained = trench.lows
    .filter(({ isFitted }) => isFitted)
    .map((low) => ({ ...low, name: trench.branches[low.branch]?.name ?? "" }));
  const [lowest] = [...drained].sort((a, b) => b.by_m - a.by_m);
  const usual_m = usualCover_m(trench.thickest_mm);
  const needed_m = abreast_m(trench.abreast_mm) + toolWidths[settings.tool].beside_m;
  const { frostDepth_m, cover_m } = settings;
  return [
    ...(elevation.kind === "flat" ? [groundLevel(source)] : []),
    ...(unknown === null ? [] : [groundUnknown(at(unknown.xy), unknown.length_m)]),
    ...(lowest === undefined ? [] : [lowPoint(at(lowest.xy), drained)]),
    ...laneFindings(trench.conflicts, rows, at, settings.dug),
    ...(trench.earth.width_m < needed_m - slack_m
      ? [tooNarrow(source, trench.earth.width_m, needed_m, trench.abreast_mm.length)]
      : []),
    ...(trench.cover_m < usual_m - slack_m ? [shallowCover(source, trench.cover_m, usual_m)] : []),
    ...(frostDepth_m === null ? [frostUnknown(source)] : []),
    ...(frostDepth_m !== null && frostDepth_m > cover_m + slack_m ? [frostGoverns(source, frostDepth_m, cover_m)] : []),
    ...(settings.soil === "rock" && settings.bedding_m < rockBedding_m - slack_m
      ? [rockBedding(source, settings.bedding_m, rockBedding_m)]
      : []),
    ...cautions({ ...trench, settings, source, deepest }),
  ];
}

type At = (xy: readonly [number, number]) => ReturnType<Ground["frame"]["toLonLat"]>;

/** One finding a kind, with the rows by name. */
function laneFindings(
  conflicts: readonly LaneConflict[],
  rows: Rows,
  at: At,
  dug: TrenchSettings["dug"],
): readonly Finding[] {
  const of = (what: LaneConflict["what"]) => {
    const own = conflicts.filter((each) => each.what === what).sort((a, b) => a.distance_m - b.distance_m);
    const indexes = [...new Set(own.map(({ row }) => row))].sort((a, b) => a - b);
    return { own, worst: own[0], names: indexes.flatMap((row) => rows.rows[row]?.id ?? []) };
  };
  const [posts, anchors, turning] = [of("post"), of("anchor"), of("turning")];
  return [
    ...(posts.worst === undefined ? [] : [nearPosts(at(posts.worst.xy), posts.names, posts.own, dug)]),
    ...(anchors.worst === undefined ? [] : [nearAnchors(at(anchors.worst.xy), anchors.names, anchors.own, dug)]),
    ...(turning.worst === undefined
      ? []
      : [noTurningRoom(at(turning.worst.xy), turning.names, turning.own.length, turning.own)]),
  ];
}

/** Where heights first end, and along how much of the line they are missing; null where none is. */
function unknownGround(profiles: readonly Profile[]) {
  let length_m = 0;
  let xy: readonly [number, number] | null = null;
  for (const profile of profiles) {
    profile.ground_m.forEach((height_m, i) => {
      if (Number.isNaN(height_m)) xy ??= [Number(profile.xy[2 * i]), Number(profile.xy[2 * i + 1])];
      if (i > 0 && (Number.isNaN(height_m) || Number.isNaN(Number(profile.ground_m[i - 1]))))
        length_m += Number(profile.station_m[i]) - Number(profile.station_m[i - 1]);
    });
  }
  return xy === null ? null : { xy, length_m };
}
