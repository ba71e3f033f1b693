import { type Finding, listed, type Phrase, quantity, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { TrenchSettings } from "../project/project.ts";
import { blockSafety } from "./thrust.ts";
import type { Earth, LaidPipe, Sleeve, Thrust } from "./trench.ts";

const foot_m = 0.3048;
/** Depths at which published rules begin: 29 CFR 1926 Subpart P. */
export const ladderFrom_m = 4 * foot_m;
export const protectedFrom_m = 5 * foot_m;
export const engineerPast_m = 20 * foot_m;
const spoilBack_m = 2 * foot_m;
const ladderWithin_m = 25 * foot_m;
const local: Phrase = say`These are United States rules (29 CFR 1926 Subpart P); your local code comes first, and a farm they do not reach is no safer.`;

export interface Trenching {
  readonly earth: Earth;
  readonly sleeves: readonly Sleeve[];
  readonly thrusts: readonly Thrust[];
  readonly pipes: readonly LaidPipe[];
  readonly settings: TrenchSettings;
  /** Where the line begins, and where it is deepest. */
  readonly source: LonLat;
  readonly deepest: LonLat;
}

/**
 * What must be said of every trench, and from the depths on at which published rules begin. Findings: trench/call-before-you-dig,
 * trench/open-trench, trench/ladder, trench/protective-system, trench/registered-engineer, trench/days-length, trench/solvent-cement,
 * trench/test-with-water, trench/thrust-blocks, trench/crossings.
 */
export function cautions(trenching: Trenching): readonly Finding[] {
  const { earth, sleeves, thrusts, pipes, settings, source, deepest } = trenching;
  const note = (code: Finding["code"], at: LonLat, message: Phrase, reason: Phrase, remedy: Phrase): Finding => {
    return { code, severity: "note", at, feature: null, message, reason, remedy };
  };
  const warn = (...told: Parameters<typeof note>): Finding => ({ ...note(...told), severity: "warning" });
  const depth = quantity("length", earth.deepest_m);
  const isAtLeast = (limit_m: number) => earth.deepest_m >= limit_m - 1e-9;
  const hardest = thrusts.find(({ isBlocked }) => isBlocked);
  return [
    note(
      "trench/call-before-you-dig",
      source,
      say`Have buried lines marked before any digging, posts and anchors too: in the United States call 811, elsewhere your own service, some days ahead.`,
      say`Gas, power and other lines lie where nobody remembers them, and cutting one can kill. Private lines, from a meter on, of a well, a fence, a shed, are not marked by the service.`,
      say`Find private lines yourself and dig by hand near all of them; look up for overhead lines too.`,
    ),
    note(
      "trench/open-trench",
      deepest,
      say`The trench is up to ${depth} deep. A trench that falls in can kill at any depth.`,
      say`A cubic metre of earth weighs as much as a car, and wet, sandy or dug-over ground and a heap at the edge make it fall sooner.`,
      [
        ...say`Nobody works alone or goes in where the sides look loose or water stands; spoil and gear at least ${quantity("length", spoilBack_m)} back from the edge; look at it every day and after rain; keep children, stock and machines away. `,
        ...local,
      ],
    ),
    ...(isAtLeast(ladderFrom_m)
      ? [
          warn(
            "trench/ladder",
            deepest,
            say`The trench is ${depth} deep: from ${quantity("length", ladderFrom_m)} on it needs a ladder or ramp within ${quantity("length", ladderWithin_m)} of whoever is in it.`,
            [...say`Nobody climbs out of a falling trench (29 CFR 1926.651(c)(2)). `, ...local],
            say`Put ladders in before anyone goes down, or lay the pipe shallower.`,
          ),
        ]
      : []),
    ...(isAtLeast(protectedFrom_m)
      ? [
          warn(
            "trench/protective-system",
            deepest,
            say`The trench is ${depth} deep: from ${quantity("length", protectedFrom_m)} on its sides must be sloped back, shored or shielded, unless it is all in stable rock.`,
            [
              ...say`29 CFR 1926.652(a)(1). Sloped back at most 3/4 to 1 in the firmest soils (class A), 1 to 1 in class B, 1 1/2 to 1 in class C; yours are set to ${settings.sideSlope_ratio} to 1. Who judges the soil must be competent to. `,
              ...local,
            ],
            say`Have someone competent choose slope, shoring or a box, or lay the pipe shallower. Shallower trenches need it too where the soil looks as if it could fall.`,
          ),
        ]
      : []),
    ...(earth.deepest_m > engineerPast_m
      ? [
          warn(
            "trench/registered-engineer",
            deepest,
            say`The trench is ${depth} deep: past ${quantity("length", engineerPast_m)} its protection must be designed by a registered engineer.`,
            [...say`29 CFR 1926.652(b) and (c). `, ...local],
            say`Do not dig this by the plan: change the route or the grade, or have it engineered.`,
          ),
        ]
      : []),
    note(
      "trench/days-length",
      source,
      say`Open no more in a day than is dug, piped, tested and half filled that day: ${quantity("length", earth.daily_m[0])} to ${quantity("length", earth.daily_m[1])} here.`,
      say`Rain turns an open trench into a ditch of mud, and sides that stood dry fall when wet.`,
      say`Cover the pipe and leave its joints open until the test; heap the spoil on the uphill side; on steep runs leave plugs of earth; mound the fill, it settles.`,
    ),
    ...(pipes.some(({ pipe }) => pipe.joint === "solvent")
      ? [
          note(
            "trench/solvent-cement",
            source,
            say`Primer and solvent cement give off fumes that burn and that make one dizzy in a trench.`,
            say`They are heavier than air and gather in low places.`,
            say`Join beside the trench or with moving air, no flame, gloves and eye protection; let joints cure as the can says before any water.`,
          ),
        ]
      : []),
    note(
      "trench/test-with-water",
      source,
      say`Test the line with water at up to ${quantity("pressure", settings.testPressure_kpa)}, filled slowly with the air let out; never with air.`,
      say`Plastic pipe under compressed air bursts into splinters. Working pressure and surge must stay below the rating of the pipe at its temperature.`,
      say`Half fill first so that the pipe lies still, stand clear, open and close valves slowly, and fit a relief valve at a pump.`,
    ),
    ...(hardest !== undefined
      ? [
          note(
            "trench/thrust-blocks",
            source,
            say`Water pushes the line with up to ${quantity("force", hardest.force_n)} where it turns, parts or ends; a block there needs a face of ${quantity("area", hardest.face_m2)}.`,
            say`Gasketed joints pull apart, and cemented ones of thick pipe may. Reckoned on the outside diameter at the test pressure, with ${blockSafety} times the face and soil that bears ${quantity("pressure", settings.soilBearing_kpa)}.`,
            say`Cast concrete against soil that was never dug and leave the joints free, or use restrained joints; know your soil, tables differ by two.`,
          ),
        ]
      : []),
    ...(sleeves.length > 0
      ? [
          note(
            "trench/crossings",
            source,
            say`The line crosses ${listed([...new Set(sleeves.map(({ name, feature }) => name ?? feature))])}.`,
            say`Roads, streams and lines belong to someone, and digging in them takes a permit in most places.`,
            say`Ask whoever owns it and the authority before you dig; the pipe goes through a sleeve there.`,
          ),
        ]
      : []),
  ];
}
