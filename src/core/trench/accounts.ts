import { type Account, account, accountInWords, commonPractice, geometry, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { TrenchSettings } from "../project/project.ts";
import type { Earth, ProfilePoint, Range, Trench, TrenchPart } from "./trench.ts";

const ownPaces = `the project’s paces, else ${commonPractice}`;

/** How the length that is dug came about, m. */
export function dugLengthAccount({ length_m, leads_m }: Pick<Trench, "length_m" | "leads_m">): Account {
  return account(
    {
      formula: say`The route on the level, and from the tee of every row to its end post where the tee is outside of it.`,
      inputs: [
        input("Route", "length", length_m),
        input(
          "From tees to rows",
          "length",
          leads_m.reduce((sum, each) => sum + each, 0),
        ),
      ],
      source: geometry,
    },
    (route_m, rows_m) => Number(route_m) + Number(rows_m),
  );
}

/** How the depths of the trench came about, in words: from the least to the most. */
export function depthAccount({ cover_m }: Pick<Trench, "cover_m">, settings: TrenchSettings): Account {
  const { pipe, bedding_m, frostDepth_m, grade_ratio } = settings;
  const isFrost = frostDepth_m !== null && cover_m > settings.cover_m;
  return accountInWords({
    formula: say`Ground over the pipe, the pipe’s outside diameter and the bedding under it. ${grade_ratio === null ? "The bottom follows the ground, a little smoothed." : "Deeper where the bottom is given its least fall."}`,
    inputs: [
      remark(isFrost ? "Ground over the pipe, by frost" : "Ground over the pipe", say`${quantity("length", cover_m)}`),
      remark("Pipe, outside", say`${quantity("diameter", pipe.outside_mm)}`),
      remark("Bedding", say`${quantity("length", bedding_m)}`),
      ...(grade_ratio === null ? [] : [remark("Least fall of the bottom", say`${quantity("ratio", grade_ratio)}`)]),
    ],
    source: commonPractice,
  });
}

/** How the earth that is cut came about, m3 as it lies. */
export function cutAccount(earth: Earth, settings: TrenchSettings): Account {
  const upright = settings.sideSlope_ratio === 0;
  const section_m2 = earth.dug_m === 0 ? 0 : earth.cut_m3 / earth.dug_m;
  return account(
    {
      formula: say`From station to station the prism between both depths: ${upright ? "width times mean depth times length" : "width and leaning sides along the way"}; added up. Here as the mean section times the length.`,
      inputs: [
        remark("Width at the bottom", say`${quantity("length", earth.width_m)}`),
        remark("Deepest", say`${quantity("length", earth.deepest_m)}`),
        ...(upright ? [] : [remark("Sides, across to one down", String(settings.sideSlope_ratio))]),
        input("Mean section", "area", section_m2),
        input("Length dug", "length", earth.dug_m),
      ],
      source: geometry,
    },
    (mean_m2, dug_m) => Number(mean_m2) * Number(dug_m),
  );
}

/** How the loose earth came about, m3 as it is thrown out. */
export function looseAccount(earth: Earth): Account {
  return account(
    {
      formula: say`What is cut, and what it swells by when it is dug.`,
      inputs: [input("Cut, as it lies", "earth", earth.cut_m3), input("It swells by", "ratio", earth.swell_ratio)],
      source: "the project’s figure, else US Army FM 5-434, from memory",
    },
    (cut_m3, swell) => Number(cut_m3) * (1 + Number(swell)),
  );
}

/** How the height of the heap came about, m. */
export function heapAccount(earth: Earth): Account {
  return account(
    {
      formula: say`The loose earth of a metre lies beside it as a long heap with sides of 1.5 across to 1 up: its height is the root of its section over 1.5, its base three times that.`,
      inputs: [
        input("Section of the heap", "area", earth.dug_m === 0 ? 0 : earth.loose_m3 / earth.dug_m),
        remark("Base", say`${quantity("length", earth.heapBase_m)}`),
      ],
      source: geometry,
    },
    (section_m2) => Math.sqrt(Number(section_m2) / 1.5),
  );
}

/** How the earth that is left over came about, m3 as it lies. */
export function surplusAccount(earth: Earth): Account {
  return account(
    {
      formula: say`Room that pipe and bedding take; what is filled back settles, so mound it.`,
      inputs: [input("Pipe", "earth", earth.pipe_m3), input("Bedding", "earth", earth.bedding_m3)],
      source: geometry,
    },
    (pipe_m3, bedding_m3) => Number(pipe_m3) + Number(bedding_m3),
  );
}

/** How the hours came about, in words: the fewest and the most. */
export function hoursAccount(earth: Earth, settings: TrenchSettings): Account {
  return accountInWords({
    formula: say`Length dug over the pace of digging and of laying pipe, loose earth over the pace of filling back; by the clock, all people or the machine at it.`,
    inputs: [
      remark("Digging", hours(earth.digging_h)),
      remark("Laying pipe", hours(earth.laying_h)),
      remark("Filling back", hours(earth.filling_h)),
      remark("People", String(settings.people)),
    ],
    source: ownPaces,
  });
}

/** How the length to open in a day came about, in words. */
export function dailyAccount(earth: Earth, settings: TrenchSettings): Account {
  return accountInWords({
    formula: say`What is dug, piped, tested and half filled within a day’s hours, so that no rain finds it open.`,
    inputs: [
      remark("Hours a day", say`${quantity("time", settings.hoursADay_h)}`),
      remark("All of it", hours(earth.hours_h)),
      remark("Days", earth.days[0] === earth.days[1] ? String(earth.days[0]) : `${earth.days[0]} to ${earth.days[1]}`),
    ],
    source: ownPaces,
  });
}

/** How the number of pieces and metres that lie in the trench came about: fittings counted by the piece. */
export function fittingsAccount(parts: readonly TrenchPart[]): Account {
  const pieces = fittingsOf(parts);
  return account(
    {
      formula: say`Tees, elbows, risers, valves, caps and all else that is counted by the piece; added up. Each is a line of the shopping list.`,
      inputs: pieces.map(({ kind, article, quantity: number }) =>
        input(`${kind.replaceAll("-", " ")} (${article})`, "count", number),
      ),
      source: commonPractice,
    },
    (...numbers) => numbers.reduce((sum, each) => sum + each, 0),
  );
}

/** What is counted by the piece. */
export function fittingsOf(parts: readonly TrenchPart[]): readonly TrenchPart[] {
  return parts.filter(({ unit, quantity: number }) => unit === "pieces" && number > 0);
}

/** Why water gathers at a low point, in words. */
export function lowPointAccount(low: ProfilePoint, settings: TrenchSettings): Account {
  return accountInWords({
    formula: say`The pipe runs downhill to here from both sides: water stands in an open trench, and what stays in the pipe freezes.`,
    inputs: [
      remark("Below its lower shoulder by", say`${quantity("length", low.by_m)}`),
      remark("Stays in the pipe", say`${quantity("volume", low.trapped_l)}`),
      remark("Drained from", say`${quantity("length", settings.leastLow_m)}`),
    ],
    source: geometry,
  });
}

function hours([least, most]: Range) {
  return least === most
    ? say`${quantity("time", least)}`
    : say`${quantity("time", least)} to ${quantity("time", most)}`;
}
