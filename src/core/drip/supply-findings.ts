import { type Finding, quantity, say, unplaced } from "../finding.ts";
import type { WaterSettings } from "../project/water-settings.ts";
import { headWorkFindings } from "./head-work-findings.ts";
import { readingFindings } from "./reading-findings.ts";
import { supplyOf } from "./supply.ts";
import { thinReadings } from "./thin-readings.ts";
import { unitFindings } from "./unit-findings.ts";
import { waterCautions } from "./water-cautions.ts";
import type { WateringJob } from "./watering-job.ts";

/**
 * What is odd about the water as it is stated, with the suspected cause, and the cautions about it; nothing while the water is not known.
 * Findings: `drip/water-incomplete`, `drip/level-below`, `drip/no-pressure`, `drip/limit-none`, `drip/others-take-all`, `drip/no-line`; those
 * of readings, units, head works and cautions.
 */
export function supplyFindings(job: WateringJob): readonly Finding[] {
  const { water, source, sets } = job;
  if (water.kind === "unknown") return [];
  const supply = supplyOf(job);
  return [
    ...(supply === null ? missing(water) : thinReadings(water)),
    ...readingFindings(water),
    ...unitFindings(water),
    ...noLimit(water),
    ...othersTakeAll(water, supply?.most_lps ?? Infinity),
    ...headWorkFindings(water, source.height_m, supply),
    ...(job.line === null ? [noLine] : []),
    ...waterCautions(water, sets),
  ];
}

function missing({ kind, tankLevel_m, staticPressure_kpa }: WaterSettings): readonly Finding[] {
  if (kind === "tank" && tankLevel_m !== null) {
    return [
      unplaced(
        "drip/level-below",
        "warning",
        tankLevel_m < 0
          ? say`The water of the tank is ${quantity("length", -tankLevel_m)} below the source's place.`
          : say`The water of the tank is level with the source's place.`,
        say`Nothing flows from it by itself.`,
        say`Suspected: a level counted from the floor or the rim of the tank. State how high the water stands above the place where the line begins, at its lowest; if it is below, it takes a pump.`,
      ),
    ];
  }
  if (kind !== "tank" && kind !== "pump" && staticPressure_kpa !== null && staticPressure_kpa <= 0) {
    return [
      unplaced(
        "drip/no-pressure",
        "warning",
        say`The pressure with nothing flowing is said to be none.`,
        say`Then nothing flows at all.`,
        say`Suspected: a field left at nothing, a gauge behind a closed valve, or one that is broken. Close all taps, open the valve before the gauge, and read it again.`,
      ),
    ];
  }
  const wanted =
    kind === "tank"
      ? "the level of its water above the source's place"
      : kind === "pump"
        ? "two or three points of its curve, each a flow and its pressure"
        : kind === "town"
          ? `${staticPressure_kpa === null ? "the static pressure, and " : ""}either the flow you are allowed or a bucket test`
          : staticPressure_kpa === null
            ? "the pressure with nothing flowing, and a bucket test: what ran in, how long it took, and the pressure meanwhile"
            : "a bucket test: what ran in, how long it took, and the pressure meanwhile";
  return [
    unplaced(
      "drip/water-incomplete",
      "warning",
      say`What is stated of the water does not say how much it gives: still wanted is ${wanted}.`,
      say`Until then only what the vines need is shown, not whether there is enough.`,
      say`Measure it and enter it, or set the water to not known yet.`,
    ),
  ];
}

function othersTakeAll({ others_lph, limitFlow_lph }: WaterSettings, most_lps: number): readonly Finding[] {
  if (most_lps > 0 || others_lph <= 0 || limitFlow_lph === 0) return [];
  return [
    unplaced(
      "drip/others-take-all",
      "warning",
      say`Others take ${quantity("flow", others_lph)} at the same time: all that the water gives.`,
      say`Nothing is left for the vines while they draw.`,
      say`Suspected: a flow per day or per hour taken for one per minute, or a limit that is for the field alone. Else water when they do not draw, and set it to none.`,
    ),
  ];
}

function noLimit({ limitFlow_lph }: WaterSettings): readonly Finding[] {
  if (limitFlow_lph === null || limitFlow_lph > 0) return [];
  return [
    unplaced(
      "drip/limit-none",
      "warning",
      say`The limit of the supply is said to be no flow at all.`,
      say`Then no set of rows may take any.`,
      say`Suspected: a field left at nothing where no limit was meant. Take it out, or enter the flow that is allowed.`,
    ),
  ];
}

const noLine = unplaced(
  "drip/no-line",
  "warning",
  say`The water is known, but no main line leads from it to the rows.`,
  say`Without a route nobody knows how far water has to go and how high, so no sets, pipes or pressures can be worked out.`,
  say`Draw the source (role source) where the water is; if it is drawn, see what is said of the main line.`,
);
