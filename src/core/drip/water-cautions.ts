import { type Finding, type Phrase, quantity, say, unplaced } from "../finding.ts";
import type { SetSettings, WaterSettings } from "../project/water-settings.ts";

const local: Phrase = say`Local code and whoever is licensed for it come first.`;

/**
 * What must be said of water under pressure, once it is known where it comes from. Findings: `drip/backflow`, `drip/injection`,
 * `drip/electricity`, `drip/pressure-hurts`, `drip/water-quality`, `drip/water-right`.
 */
export function waterCautions(water: WaterSettings, sets: SetSettings): readonly Finding[] {
  if (water.kind === "unknown") return [];
  const note = (code: Finding["code"], message: Phrase, reason: Phrase, remedy: Phrase) =>
    unplaced(code, "note", message, reason, remedy);
  const injects = water.headWorks.some(({ kind }) => kind === "injector-port");
  const isElectric = water.kind === "pump" || sets.control === "controller";
  return [
    note(
      "drip/backflow",
      say`Any connection to drinking water, or to water that others use, needs the backflow device that your authority approves.`,
      say`Water from the field that runs back, with soil, animals' dirt or what is injected in it, makes people ill.`,
      [
        ...say`Ask before you buy: the kind, its place, its height and its yearly test are prescribed in most places. `,
        ...local,
      ],
    ),
    ...(injects
      ? [
          note(
            "drip/injection",
            say`Injecting fertilizer or chemicals usually takes a reduced-pressure assembly or a full chemigation valve set: check valve, vacuum relief, low-pressure drain, check on the injection line, interlock with the pump.`,
            say`Without them it runs into the well, or is pumped out of its tank when the water stops. Acid and chlorine together give off a gas that kills.`,
            [...say`The label is the law; never mix acid and chlorine; lock the injector to the pump. `, ...local],
          ),
        ]
      : []),
    ...(isElectric
      ? [
          note(
            "drip/electricity",
            say`Pump and controller are for a licensed electrician: ground-fault protection, a disconnect in sight, no work live or wet.`,
            say`Water and electricity together kill.`,
            [
              ...say`Low-voltage wire of valves lies apart from power lines, in its own conduit where it may be cut. `,
              ...local,
            ],
          ),
        ]
      : []),
    note(
      "drip/pressure-hurts",
      say`Water under pressure hurts: relieve it before a fitting is opened, close valves over ${quantity("time", Math.max(water.closing_h, 2 / 3600))} or more, fit a relief valve at a pump, and never test with air.`,
      say`Working pressure and surge together must stay under the rating of the pipe at its temperature; a tank on a height presses even when nothing runs.`,
      [
        ...say`See the highest pressures of this plan against the ratings on your own pipe, hose and emitters. `,
        ...local,
      ],
    ),
    note(
      "drip/water-quality",
      say`Have the water tested for iron, manganese, hardness, sand and salt before emitters and filter are bought.`,
      say`They decide which filter works, and what clogs in a year; loss of the filter is counted clean and due for cleaning.`,
      say`Filter to the mesh that the emitter's maker asks for, and flush every lateral at its end at the start and through the season.`,
    ),
    note(
      "drip/water-right",
      say`Water right, well permit and metering are yours to check.`,
      say`Drawing water without them is an offence in many places, and takes it from others.`,
      say`Ask the authority before you build.`,
    ),
  ];
}
