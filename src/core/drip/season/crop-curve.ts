import type { SeasonSettings } from "../../project/water-settings.ts";

/** Crop coefficient through the season: straight lines from point to point, none before the first and after the last. */
export interface CropCurve {
  /** Months from 1 with parts, rising; past 13 is the year after. */
  readonly months: readonly [budBreak: number, fullLeaf: number, ripening: number, leafFall: number];
  readonly coefficients: readonly [number, number, number, number];
}

/** Bud break, full leaf, first colour and leaf fall one after another: a stage that is earlier in the year than the one before is in the year after. */
export function stagesInOrder(stages: SeasonSettings["stages"]): SeasonSettings["stages"] {
  const after = (month: number, than: number) => month + 12 * Math.max(0, Math.ceil((than - month) / 12));
  const [budBreak, second, third, fourth] = stages;
  const fullLeaf = after(second, budBreak);
  const ripening = after(third, fullLeaf);
  return [budBreak, fullLeaf, ripening, after(fourth, ripening)];
}

/** True when the stages follow each other within a year. */
export function isOneSeason(stages: SeasonSettings["stages"]): boolean {
  const [first, , , last] = stagesInOrder(stages);
  return last - first <= 12;
}

/** Coefficient in full leaf: from the ground shaded at noon where that is known, 0.002 + 0.017 a per cent (Williams and Ayars 2005, from memory). */
export function fullLeafCoefficient({ shaded_ratio, cropMid }: SeasonSettings): number {
  return shaded_ratio === null ? cropMid : 0.002 + 1.7 * shaded_ratio;
}

/**
 * Crop coefficients of grown vines through the season: at bud break that of the start, rising to that of full leaf, level until first colour,
 * falling to that of the end at leaf fall (FAO-56 figure 34 without a level start). Start and end are never above full leaf. Stages that do not
 * fit in a year are taken in the order of the calendar.
 */
export function cropCurve(season: SeasonSettings): CropCurve {
  const mid = fullLeafCoefficient(season);
  const [a, b, c, d] = season.stages;
  const [first = a, second = b, third = c, fourth = d] = [a, b, c, d].sort((one, other) => one - other);
  return {
    months: isOneSeason(season.stages) ? stagesInOrder(season.stages) : [first, second, third, fourth],
    coefficients: [Math.min(season.cropStart, mid), mid, mid, Math.min(season.cropEnd, mid)],
  };
}

/** Mean coefficient from one moment to another, months with parts; outside the season it counts as nothing. */
export function meanCoefficient({ months, coefficients }: CropCurve, from: number, to: number): number {
  const area = [0, 1, 2].reduce((sum, i) => {
    const [begins = 0, ends = 0] = [months[i], months[i + 1]];
    const [start = 0, end = 0] = [coefficients[i], coefficients[i + 1]];
    const [first, last] = [Math.max(from, begins), Math.min(to, ends)];
    if (last <= first) return sum;
    const middle = ((first + last) / 2 - begins) / (ends - begins);
    return sum + (last - first) * (start + middle * (end - start));
  }, 0);
  return to > from ? area / (to - from) : 0;
}
