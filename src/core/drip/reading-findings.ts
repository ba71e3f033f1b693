import { type Finding, type Phrase, quantity, say, unplaced } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { WaterSettings } from "../project/water-settings.ts";

interface Reading {
  readonly flow_lph: number;
  readonly pressure_kpa: number;
}

/** Less than a gauge can be read to. */
const readable_kpa = 1;
/** A flow per hour that was meant per minute, and no less apart than this from the others, is suspected. */
const apart = 5;

/**
 * Readings of the source that cannot all be right, with what is suspected. Findings: `drip/no-flow-read`, `drip/pressure-rises`,
 * `drip/above-static`.
 */
export function readingFindings(water: WaterSettings): readonly Finding[] {
  return [...emptyReadings(water), ...rising(water), ...aboveStatic(water)];
}

function emptyReadings({ kind, tests, pump }: WaterSettings): readonly Finding[] {
  const empty = tests.findIndex(({ volume_l, time_h }) => volume_l <= 0 || time_h <= 0);
  const test = tests[empty];
  if (kind !== "pump" && test !== undefined) {
    const what: Phrase =
      test.time_h <= 0
        ? say`says that ${quantity("volume", test.volume_l)} took no time`
        : say`says that nothing ran in ${quantity("time", test.time_h)}`;
    return [
      unplaced(
        "drip/no-flow-read",
        "warning",
        [...say`Bucket test ${empty + 1} `, ...what, "."],
        say`A flow is what ran in over the time it took; without both there is none, so this test is left out.`,
        say`Suspected: a field that is not filled in, or a time shorter than its unit can show. Enter what ran into the bucket and the seconds it took.`,
      ),
    ];
  }
  if (kind === "pump" && pump.length > 0 && pump.every(({ flow_lph }) => flow_lph <= 0)) {
    return [
      unplaced(
        "drip/no-flow-read",
        "warning",
        say`No point of the pump's curve has a flow.`,
        say`Then nobody knows what it gives while it runs.`,
        say`Suspected: only the pressure at closed valves was entered. Add two or three points that it runs at, from its maker's curve.`,
      ),
    ];
  }
  return [];
}

function readingsOf({ kind, tests, pump }: WaterSettings): readonly Reading[] {
  const read =
    kind === "pump"
      ? pump
      : tests.flatMap(({ volume_l, time_h, pressure_kpa }) =>
          volume_l > 0 && time_h > 0 ? [{ flow_lph: volume_l / time_h, pressure_kpa: pressure_kpa ?? 0 }] : [],
        );
  return [...read].sort((a, b) => a.flow_lph - b.flow_lph);
}

function rising(water: WaterSettings): readonly Finding[] {
  const read = readingsOf(water);
  const at = read.findIndex((each, i) => each.pressure_kpa > (read[i - 1]?.pressure_kpa ?? Infinity) + readable_kpa);
  const [less, more] = [read[at - 1], read[at]];
  if (less === undefined || more === undefined) return [];
  return [
    unplaced(
      "drip/pressure-rises",
      "warning",
      say`The pressure rises with the flow: ${quantity("pressure", less.pressure_kpa)} at ${quantity("flow", less.flow_lph)}, but ${quantity("pressure", more.pressure_kpa)} at ${quantity("flow", more.flow_lph)}.`,
      say`Whatever water comes from, the more is drawn the lower the pressure. One reading is wrong; until it is right the lower pressure counts for both.`,
      [
        ...suspectedRise(less, more, read),
        ...say` Read both again one after the other while nobody else draws water, the gauge while it flows.`,
      ],
    ),
  ];
}

function suspectedRise(less: Reading, more: Reading, read: readonly Reading[]): Phrase {
  const meant_lph = less.flow_lph * 60;
  const others = read.filter((each) => each !== less);
  const fits = others.every(({ flow_lph, pressure_kpa }) => flow_lph < meant_lph === pressure_kpa > less.pressure_kpa);
  if (more.flow_lph > apart * less.flow_lph && fits) {
    return say`Suspected: ${quantity("flow", less.flow_lph)} was meant per minute, which is ${quantity("flow", meant_lph)}.`;
  }
  if (less.pressure_kpa === 0) {
    return say`Suspected: at ${quantity("flow", less.flow_lph)} no pressure was read, so it counts as an open outlet at none.`;
  }
  return say`Suspected: the two pressures are swapped, or one was read when a pump had just cut in or others drew water.`;
}

function aboveStatic(water: WaterSettings): readonly Finding[] {
  const static_kpa =
    water.kind === "tank"
      ? water.tankLevel_m === null
        ? null
        : pressureOf_kpa(water.tankLevel_m)
      : water.staticPressure_kpa;
  const highest = readingsOf(water).reduce<Reading | null>(
    (most, each) => (each.pressure_kpa > (most?.pressure_kpa ?? -Infinity) ? each : most),
    null,
  );
  if (static_kpa === null || highest === null || highest.pressure_kpa <= static_kpa + readable_kpa) return [];
  const what = water.kind === "tank" ? "what the level of the tank gives" : "the static pressure";
  return [
    unplaced(
      "drip/above-static",
      "warning",
      say`${quantity("pressure", highest.pressure_kpa)} at ${quantity("flow", highest.flow_lph)} is more than ${what}, ${quantity("pressure", static_kpa)}.`,
      say`With nothing flowing the pressure is at its highest. One of the two is wrong; until it is right the lower counts.`,
      water.kind === "tank"
        ? say`Suspected: the level is not that of the water above the gauge, or a pump feeds the line. Check both.`
        : say`Suspected: different units or different gauges, or a static pressure read while someone drew water or before the pump had stopped. Close everything, wait, and read it again.`,
    ),
  ];
}
