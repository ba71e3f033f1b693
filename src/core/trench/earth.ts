import type { TrenchSettings } from "../project/project.ts";
import { dugPerHour_m, filledByHand_m3ph, hoursAt, swells, testing_h } from "./paces.ts";
import { heapOf, prism_m3, topWidth_m } from "./section.ts";
import type { Earth, Profile, Range } from "./trench.ts";
import { trenchWidth_m } from "./trench-width.ts";

/** What is opened in a day is left half filled: pipe covered, joints open. */
export const halfFilled = 0.5;
/** Of a working day the test takes no more than this share. */
const mostTesting = 0.5;

/** What is dug beside the route, and at what depth. */
export interface LeadDug {
  readonly length_m: number;
  readonly depth_m: number;
}

/** The pipes that lie in it. */
export interface PipesDug {
  readonly pipes: readonly { readonly pipe: { readonly outside_mm: number }; readonly length_m: number }[];
  /** Outside diameters where they take most room. */
  readonly abreast_mm: readonly number[];
}

/**
 * Earth that the trench moves and the time it takes. Volumes are exact prisms from station to station along the real depths; what two
 * branches share where they meet is counted for both. Pipes take their outside diameters along the ground, bedding its depth over the
 * bottom; leads hold no more than a thin riser, which is not taken off.
 */
export function earthOf(
  profiles: readonly Profile[],
  leads: readonly LeadDug[],
  { pipes, abreast_mm }: PipesDug,
  settings: TrenchSettings,
): Earth {
  const width_m = trenchWidth_m(settings, abreast_mm);
  const { sideSlope_ratio, bedding_m } = settings;
  const deepest = deepestOf(profiles);
  const length_m = profiles.reduce((sum_m, { station_m }) => sum_m + (station_m.at(-1) ?? 0), 0);
  const dug_m = leads.reduce((sum_m, lead) => sum_m + lead.length_m, length_m);
  const cut_m3 = leads.reduce(
    (sum_m3, { length_m: lead_m, depth_m }) => sum_m3 + prism_m3(width_m, depth_m, depth_m, sideSlope_ratio, lead_m),
    profiles.reduce((sum_m3, profile) => sum_m3 + cutOf_m3(profile, width_m, sideSlope_ratio), 0),
  );
  const pipe_m3 = pipes.reduce((sum_m3, each) => sum_m3 + pipeVolume_m3(each.pipe.outside_mm, each.length_m), 0);
  const bedding_m3 = prism_m3(width_m, bedding_m, bedding_m, sideSlope_ratio, dug_m);
  const swell_ratio = settings.swell_ratio ?? swells[settings.soil];
  const loose_m3 = cut_m3 * (1 + swell_ratio);
  const heap = heapOf(dug_m > 0 ? loose_m3 / dug_m : 0);
  return {
    width_m,
    topWidth_m: topWidth_m(width_m, deepest.depth_m, sideSlope_ratio),
    dug_m,
    cut_m3,
    pipe_m3,
    bedding_m3,
    backfill_m3: cut_m3 - pipe_m3 - bedding_m3,
    surplus_m3: pipe_m3 + bedding_m3,
    swell_ratio,
    loose_m3,
    heapHeight_m: heap.height_m,
    heapBase_m: heap.base_m,
    ...timeOf(dug_m, cut_m3, loose_m3, settings),
    deepest_m: deepest.depth_m,
    deepestAt: deepest.xy,
  };
}

/** What a length of pipe takes of the trench. */
export function pipeVolume_m3(outside_mm: number, length_m: number): number {
  return (Math.PI / 4) * (outside_mm / 1000) ** 2 * length_m;
}

/** Bank earth of one branch. */
export function cutOf_m3({ station_m, depth_m }: Profile, width_m: number, slope_ratio: number): number {
  let sum_m3 = 0;
  for (let i = 1; i < station_m.length; i++) {
    const length_m = Number(station_m[i]) - Number(station_m[i - 1]);
    sum_m3 += prism_m3(width_m, Number(depth_m[i - 1]), Number(depth_m[i]), slope_ratio, length_m);
  }
  return sum_m3;
}

function deepestOf(profiles: readonly Profile[]) {
  let best: { readonly depth_m: number; readonly xy: readonly [number, number] } = { depth_m: 0, xy: [0, 0] };
  for (const { depth_m, xy } of profiles) {
    depth_m.forEach((each_m, i) => {
      if (each_m > best.depth_m) best = { depth_m: each_m, xy: [Number(xy[2 * i]), Number(xy[2 * i + 1])] };
    });
  }
  return best;
}

/** The same people dig, lay, test and half fill what they open in a day; the rest is filled back later. */
function timeOf(dug_m: number, cut_m3: number, loose_m3: number, settings: TrenchSettings) {
  const { people, laidPerHour_m, hoursADay_h } = settings;
  if (dug_m === 0) {
    const none: Range = [0, 0];
    return { digging_h: none, laying_h: none, filling_h: none, hours_h: none, daily_m: none, days: none };
  }
  const digging_h = hoursAt(dug_m, dugPerHour_m(settings, cut_m3 / dug_m));
  const laying_h = hoursAt(dug_m, byAll(laidPerHour_m, people));
  const filling_h = hoursAt(loose_m3, byAll(filledByHand_m3ph, people));
  const day_m = (i: 0 | 1) => dayOf_m(dug_m, digging_h[i] + laying_h[i] + halfFilled * filling_h[i], hoursADay_h);
  const daily_m: Range = [day_m(1), day_m(0)];
  return {
    digging_h,
    laying_h,
    filling_h,
    hours_h: [digging_h[0] + laying_h[0] + filling_h[0], digging_h[1] + laying_h[1] + filling_h[1]] as const,
    daily_m,
    days: [Math.ceil(dug_m / daily_m[1]), Math.ceil(dug_m / daily_m[0])] as const,
  };
}

/** What is dug, laid, tested and half filled in a working day of what takes `all_h` together; the whole where it takes less. */
export function dayOf_m(dug_m: number, all_h: number, hoursADay_h: number): number {
  const working_h = hoursADay_h - Math.min(testing_h, mostTesting * hoursADay_h);
  return Math.min(dug_m, (working_h * dug_m) / all_h);
}

function byAll([slow, fast]: Range, people: number): Range {
  return [people * slow, people * fast];
}
