import { type Finding, quantity, say, unplaced } from "../finding.ts";
import type { WaterSettings } from "../project/water-settings.ts";
import { inUnit } from "../units.ts";

/* Numbers that look like another unit's. Limits are common practice, no source. */

/** Less than a garden tap drips; more than a farm has. */
const leastFlow_lph = 60;
/** A gauge in bar reads 1 to 10 where one in kPa reads 100 to 1000; one in psi 15 to 145. */
const bar_kpa = 100;
const leastPressure_kpa = 100;
const barLike_kpa = 14;
const mostPressure_kpa = 1600;
/** A bucket is full in seconds to minutes, and one under two seconds cannot be timed. */
const slowest_h = 0.5;
const quickest_h = 2 / 3600;
/** Between the same flow per minute and per hour lie 60 times. */
const hourLike = [30, 120] as const;

/**
 * Numbers of the water that are probable mistakes of unit, with the unit that is suspected. Findings: `drip/slow-bucket`, `drip/quick-bucket`,
 * `drip/little-flow`, `drip/low-pressure`, `drip/high-pressure`, `drip/limit-unlike`, `drip/least-above-most`.
 */
export function unitFindings(water: WaterSettings): readonly Finding[] {
  return [...buckets(water), ...littleFlow(water), ...pressures(water), ...limitUnlike(water), ...leastFlow(water)];
}

function buckets({ kind, tests }: WaterSettings): readonly Finding[] {
  if (kind === "pump") return [];
  return tests.flatMap(({ volume_l, time_h }, i): readonly Finding[] => {
    if (volume_l <= 0 || time_h <= 0) return [];
    const flow = quantity("flow", volume_l / time_h);
    if (time_h >= slowest_h) {
      const asSeconds = quantity("flow", volume_l / (time_h / 3600));
      return [
        unplaced(
          "drip/slow-bucket",
          "warning",
          say`Bucket test ${i + 1} took ${quantity("time", time_h)} for ${quantity("volume", volume_l)}: that is ${flow}.`,
          say`A bucket is full in seconds, a barrel in minutes. With so little water nearly nothing can be watered.`,
          say`Suspected: seconds or minutes taken for hours, as a bare number in a file is; in seconds it would be ${asSeconds}. Write the time with its unit, such as "20 s".`,
        ),
      ];
    }
    if (time_h < quickest_h - 1e-12) {
      return [
        unplaced(
          "drip/quick-bucket",
          "warning",
          say`Bucket test ${i + 1} took ${quantity("time", time_h)} for ${quantity("volume", volume_l)}: that is ${flow}.`,
          say`Nobody can time that well: half a second more or less changes the flow by a quarter or more.`,
          say`Suspected: minutes taken for seconds. Use a larger vessel that takes 20 seconds or more, or let it fill several times.`,
        ),
      ];
    }
    return [];
  });
}

/** The most that was measured or that a pump's curve ends with, L/h; null: nothing. */
function read_lph({ kind, tests, pump }: WaterSettings): number | null {
  const flows =
    kind === "pump"
      ? pump.map(({ flow_lph }) => flow_lph)
      : tests.flatMap(({ volume_l, time_h }) => (time_h > 0 && time_h < slowest_h ? [volume_l / time_h] : []));
  const most = Math.max(0, ...flows);
  return most > 0 ? most : null;
}

function littleFlow(water: WaterSettings): readonly Finding[] {
  const read = read_lph(water);
  const { limitFlow_lph: limit } = water;
  const what = water.kind === "pump" ? "The pump's curve ends at" : "The bucket tests give";
  return [
    { flow: read, says: what },
    { flow: limit, says: "The limit of the supply is" },
  ].flatMap(({ flow, says }) =>
    flow === null || flow <= 0 || flow >= leastFlow_lph
      ? []
      : [
          unplaced(
            "drip/little-flow",
            "warning",
            say`${says} ${quantity("flow", flow)}, hardly more than a dripping tap.`,
            say`Every set has to do with that flow.`,
            say`Suspected: a flow per minute taken for one per hour (gal/min for gal/h, L/min for L/h); per minute it would be ${quantity("flow", flow * 60)}. Write it with its unit, such as "10 gal/min".`,
          ),
        ],
  );
}

function pressures(water: WaterSettings): readonly Finding[] {
  const { kind, staticPressure_kpa, tests, pump } = water;
  if (kind === "tank") return [];
  const read = kind === "pump" ? pump : tests;
  const all = [staticPressure_kpa, ...read.map(({ pressure_kpa }) => pressure_kpa)].flatMap((each) =>
    each === null || each <= 0 ? [] : [each],
  );
  const highest = Math.max(...all);
  if (all.length === 0) return [];
  if (highest < leastPressure_kpa) {
    const isBarLike = highest <= barLike_kpa;
    const meant = quantity("pressure", isBarLike ? highest * bar_kpa : highest / inUnit("pressure", 1, "psi"));
    return [
      unplaced(
        "drip/low-pressure",
        "warning",
        say`The highest pressure of the water is ${quantity("pressure", highest)}.`,
        say`Filter, valves and emitters need more than that, and taps and pumps give several times as much.`,
        say`Suspected: a gauge in ${isBarLike ? "bar" : "psi"} taken for kPa, which a bare number in a file is; it would be ${meant}. If it is right, and the water comes from a tank, a pond or a spring above, state its level instead.`,
      ),
    ];
  }
  if (highest > mostPressure_kpa) {
    const kpaAsPsi = quantity("pressure", inUnit("pressure", highest, "psi"));
    return [
      unplaced(
        "drip/high-pressure",
        "warning",
        say`The highest pressure of the water is ${quantity("pressure", highest)}.`,
        say`Few supplies have so much, and most plastic pipe does not stand it.`,
        say`Suspected: a gauge in kPa taken for psi, or in psi for bar; in kPa it would be ${kpaAsPsi}. If it is right, do not work on it yourself: such pressure hurts.`,
      ),
    ];
  }
  return [];
}

function limitUnlike(water: WaterSettings): readonly Finding[] {
  const read = read_lph(water);
  const { limitFlow_lph: limit } = water;
  if (read === null || limit === null || limit <= 0) return [];
  const [least, most] = hourLike;
  const times = read / limit;
  const isLike = (ratio: number) => ratio >= least && ratio <= most;
  if (!isLike(times) && !isLike(1 / times)) return [];
  return [
    unplaced(
      "drip/limit-unlike",
      "warning",
      say`The limit of the supply is ${quantity("flow", limit)}, but ${quantity("flow", read)} ${water.kind === "pump" ? "is what the pump gives" : "was measured"}.`,
      say`They are about 60 times apart, as the same flow per minute and per hour is. The smaller of the two counts.`,
      say`Suspected: one was given per hour and meant per minute, or the other way round. Check the units of both.`,
    ),
  ];
}

function leastFlow(water: WaterSettings): readonly Finding[] {
  const { leastFlow_lph: least, limitFlow_lph: limit } = water;
  const most = Math.min(read_lph(water) ?? Infinity, limit ?? Infinity);
  if (least === null || least <= most) return [];
  const isHourLike = least / most >= hourLike[0] && least / most <= hourLike[1];
  return [
    unplaced(
      "drip/least-above-most",
      "warning",
      say`The pump is not to give less than ${quantity("flow", least)}, but gives at most ${quantity("flow", most)}.`,
      say`No set of rows can take a flow that is both.`,
      isHourLike
        ? say`Suspected: a flow per hour taken for one per minute: ${quantity("flow", least / 60)} may be meant. Check the units of both.`
        : say`Suspected: a curve that was entered only in part, or the flow of another pump. Check both.`,
    ),
  ];
}
