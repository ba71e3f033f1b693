import { type Finding, type Phrase, quantity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { rowsNamed } from "../rows/rows-named.ts";
import type { LaneConflict, ProfilePoint } from "./trench.ts";

function placed(
  code: Finding["code"],
  severity: Finding["severity"],
  at: LonLat | null,
  message: Phrase,
  reason: Phrase,
  remedy: Phrase,
): Finding {
  return { code, severity, at, feature: null, message, reason, remedy };
}

/** Heights end before the line does. */
export function groundUnknown(at: LonLat, unknown_m: number): Finding {
  return placed(
    "trench/ground-unknown",
    "warning",
    at,
    say`Heights are not known along ${quantity("length", unknown_m)} of the trench.`,
    say`There the depth is that of the cover, lengths count as level, and low points cannot be told.`,
    say`Add heights that reach past the line, or look for low places there by eye and level.`,
  );
}

/** No heights at all. */
export function groundLevel(at: LonLat): Finding {
  return placed(
    "trench/ground-level",
    "note",
    at,
    say`No heights are given, so the trench is reckoned as on level ground.`,
    say`Real ground has low places where water stands in pipe and trench, and its length is a little more.`,
    say`Add a height grid, spot heights or a track with heights.`,
  );
}

/** Where to drain. */
export function lowPoint(at: LonLat, lows: readonly (ProfilePoint & { readonly name: string })[]): Finding {
  const [deepest] = [...lows].sort((a, b) => b.by_m - a.by_m);
  const litres = lows.reduce((sum_l, { trapped_l }) => sum_l + trapped_l, 0);
  return placed(
    "trench/low-point",
    "note",
    at,
    [
      ...say`Water gathers at ${lows.length} low ${lows.length === 1 ? "point" : "points"} of the line, at `,
      ...places(lows),
      ...say`; the deepest lies ${quantity("length", deepest?.by_m ?? 0)} below its lower shoulder.`,
    ],
    say`The pipe keeps ${quantity("volume", litres)} there when it is shut off, and an open trench stands under water there after rain.`,
    say`A drain valve at each${lows.some(({ fitted }) => fitted > 1) ? ", for every pipe there" : ""}, with a pocket of gravel, is counted; keep an outlet for standing water while the trench is open, and do not work in water.`,
  );
}

function places(points: readonly (ProfilePoint & { readonly name: string })[]): Phrase {
  const most = 5;
  const shown = points.slice(0, most).flatMap(({ name, station_m }, i): Phrase => {
    return say`${i === 0 ? "" : ", "}${quantity("length", station_m)} of ${name}`;
  });
  return points.length > most ? [...shown, ` and ${points.length - most} more`] : shown;
}

type Near = readonly Pick<LaneConflict, "distance_m" | "least_m">[];

function nearest(conflicts: Near) {
  const distance_m = conflicts.reduce((least_m, each) => Math.min(least_m, each.distance_m), Infinity);
  return { distance: quantity("length", distance_m), least: quantity("length", conflicts[0]?.least_m ?? 0) };
}

/** Posts nearer to the trench than they should be. */
export function nearPosts(
  at: LonLat,
  rows: readonly string[],
  conflicts: Near,
  dug: "before-posts" | "after-posts",
): Finding {
  const { distance, least } = nearest(conflicts);
  return placed(
    "trench/near-posts",
    "warning",
    at,
    say`The trench comes within ${distance} of a post of ${rowsNamed(rows)}; ${least} is asked for.`,
    dug === "after-posts"
      ? say`Digging beside a post loosens it, and its side of the trench may fall in.`
      : say`A post set at the edge of dug soil holds less, and its auger may meet the pipe.`,
    say`Choose another lane, draw the line farther out, or ask for less distance if your posts stand it.`,
  );
}

/** Anchors nearer to the trench than they should be. */
export function nearAnchors(
  at: LonLat,
  rows: readonly string[],
  conflicts: Near,
  dug: "before-posts" | "after-posts",
): Finding {
  const { distance, least } = nearest(conflicts);
  return placed(
    "trench/near-anchors",
    "warning",
    at,
    say`The trench comes within ${distance} of an anchor of ${rowsNamed(rows)}; ${least} is asked for.`,
    dug === "after-posts"
      ? say`An anchor holds less beside dug soil, and it is under tension while you dig: the row may let go.`
      : say`An anchor in dug soil holds less than in soil that was never dug, however well it is filled back.`,
    say`Choose another lane, draw the line farther out, or move the anchors.`,
  );
}

/** The trencher cannot turn. */
export function noTurningRoom(at: LonLat, rows: readonly string[], places: number, conflicts: Near): Finding {
  const { distance, least } = nearest(conflicts);
  const of = rows.length === 0 ? "a boundary or an obstacle" : `posts, anchors or bounds (${rowsNamed(rows)})`;
  return placed(
    "trench/no-turning-room",
    "warning",
    at,
    say`At ${places} ${places === 1 ? "place" : "places"} the trencher comes within ${distance} of ${of}; it takes ${least} to turn.`,
    say`The trench is dug after the posts stand: bends and ends of the line are where the machine swings and drives off.`,
    say`Dig before the posts are set, dig those places by hand, or use a smaller machine.`,
  );
}

/** The width that was asked for does not take the pipe. */
export function tooNarrow(at: LonLat, width_m: number, needed_m: number, pipes: number): Finding {
  return placed(
    "trench/too-narrow",
    "warning",
    at,
    say`The trench is ${quantity("length", width_m)} wide; ${pipes === 1 ? "the pipe and room to work beside it" : `${pipes} pipes side by side and room to work beside them`} take ${quantity("length", needed_m)}.`,
    say`Pipe that touches the sides is not bedded, and its joints cannot be made or looked at.`,
    say`Make it wider, or leave the width open.`,
  );
}

/** Cover under what is usual. */
export function shallowCover(at: LonLat, cover_m: number, usual_m: number): Finding {
  return placed(
    "trench/shallow-cover",
    "warning",
    at,
    say`The pipe has ${quantity("length", cover_m)} of ground over it; ${quantity("length", usual_m)} is usual where there is traffic, frost or farming.`,
    say`Wheels, tools and frost break pipe that lies shallow (NRCS conservation practice standard 430, Irrigation Pipeline).`,
    say`Lay it deeper, or ask locally: less may do where nothing drives, nothing freezes and the soil does not crack.`,
  );
}

/** Frost decides the depth. */
export function frostGoverns(at: LonLat, frost_m: number, cover_m: number): Finding {
  return placed(
    "trench/frost-governs",
    "note",
    at,
    say`The pipe lies below the frost depth of ${quantity("length", frost_m)}, deeper than the cover of ${quantity("length", cover_m)} that was asked for.`,
    say`Water that freezes in it would break it.`,
    say`Nothing to do; or drain or blow the line out before frost and lay it shallower, without a frost depth.`,
  );
}

/** Nobody said how deep frost goes. */
export function frostUnknown(at: LonLat): Finding {
  return placed(
    "trench/frost-unknown",
    "note",
    at,
    say`No frost depth is given.`,
    say`Water left in pipe above the frost depth breaks it.`,
    say`Set your local figure to lay the pipe below it, or drain or blow the line out before frost.`,
  );
}

/** Rock without a bed. */
export function rockBedding(at: LonLat, bedding_m: number, least_m: number): Finding {
  return placed(
    "trench/rock-bedding",
    "warning",
    at,
    say`The trench is in rock and has ${quantity("length", bedding_m)} of bedding; ${quantity("length", least_m)} is the least there.`,
    say`Pipe on rock breaks where a point carries it (NRCS conservation practice standard 430).`,
    say`Dig it deeper and lay the pipe in sand or fine earth; no chain trencher for earth digs rock.`,
  );
}

/** "row 3", "rows 3, 5 and 12 more" */
