import type { SoilClass, TrenchSettings, TrenchTool } from "../project/project.ts";
import type { Range } from "./trench.ts";

/** Loose over bank, less 1: US Army FM 5-434, from memory (calculation handbook, section 7). Rock is blasted or broken. */
export const swells: Readonly<Record<SoilClass, number>> = { sand: 0.11, loam: 0.25, clay: 0.43, rock: 0.5 };

/** Metres an hour of a machine at usual depths: chain trencher by the calculation handbook, section 9. Common practice, no source. */
const machines_mph: Readonly<Record<Exclude<TrenchTool, "hand">, Range>> = { trencher: [30, 100], excavator: [15, 40] };

/** Bank earth that one person digs by hand in an hour, m3. Common practice, no source. */
const byHand_m3ph: Readonly<Record<SoilClass, Range>> = {
  sand: [0.5, 1],
  loam: [0.4, 0.8],
  clay: [0.25, 0.5],
  rock: [0.05, 0.2],
};

/** Loose earth that one person shovels back and treads down in an hour, m3. Common practice, no source. */
export const filledByHand_m3ph: Range = [1, 2];

/** What a pressure test and looking at every joint takes of a day, h. Common practice, no source. */
export const testing_h = 1;

/** Metres dug in an hour, all together: as set, else of the machine, else of every person by the earth in a metre. */
export function dugPerHour_m(
  { dugPerHour_m: set, tool, soil, people }: Pick<TrenchSettings, "dugPerHour_m" | "tool" | "soil" | "people">,
  cut_m3pm: number,
): Range {
  if (set !== null) return set;
  if (tool !== "hand") return machines_mph[tool];
  const [slow_m3, fast_m3] = byHand_m3ph[soil];
  return [(people * slow_m3) / cut_m3pm, (people * fast_m3) / cut_m3pm];
}

/** Hours that a length takes at a pace, least first. */
export function hoursAt(length: number, [slow, fast]: Range): Range {
  return [length / fast, length / slow];
}
