import { type Account, account, commonPractice, input, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { TrenchSettings } from "../project/project.ts";
import { dayOf_m, halfFilled } from "./earth.ts";
import { dugPerHour_m, filledByHand_m3ph } from "./paces.ts";
import type { Trench } from "./trench.ts";

/** The quick end of a range of times, or the slow one. */
export type Pace = "least" | "most";

const place = { least: 0, most: 1 } as const;
/** The quick time goes with the fast pace. */
const paceFor = { least: 1, most: 0 } as const;

/** How long digging takes, h. */
export function diggingAccount({ earth }: Trench, settings: TrenchSettings, of: Pace): Account {
  const pace_mph = earth.dug_m > 0 ? dugPerHour_m(settings, earth.cut_m3 / earth.dug_m)[paceFor[of]] : 1;
  return account(
    {
      formula: say`Everything dug over what is dug in an hour.`,
      inputs: [
        input("Dug", "length", earth.dug_m),
        input("In an hour", "length", pace_mph),
        remark("With", byWhom(settings)),
      ],
      source: commonPractice,
    },
    (dug_m = 0, each_m = 1) => dug_m / each_m,
  );
}

/** How long laying the pipe takes, h. */
export function layingAccount({ earth }: Trench, { laidPerHour_m, people }: TrenchSettings, of: Pace): Account {
  return account(
    {
      formula: say`Everything dug over what each person lays in an hour and the people.`,
      inputs: [
        input("Dug", "length", earth.dug_m),
        input("Laid by one in an hour", "length", laidPerHour_m[paceFor[of]]),
        input("People", "count", people),
      ],
      source: commonPractice,
    },
    (dug_m = 0, each_m = 1, many = 1) => dug_m / (each_m * many),
  );
}

/** How long filling back by hand takes, h. */
export function fillingAccount({ earth }: Trench, { people }: TrenchSettings, of: Pace): Account {
  return account(
    {
      formula: say`Loose earth over what each person shovels back and treads down in an hour and the people.`,
      inputs: [
        input("Loose earth", "earth", earth.loose_m3),
        input("Filled by one in an hour", "earth", filledByHand_m3ph[paceFor[of]]),
        input("People", "count", people),
      ],
      source: commonPractice,
    },
    (loose_m3 = 0, each_m3 = 1, many = 1) => loose_m3 / (each_m3 * many),
  );
}

/** Digging, laying and filling one after another, h by the clock. */
export function hoursAccount({ earth }: Trench, of: Pace): Account {
  return account(
    {
      formula: say`Digging, laying the pipe and filling back, one after another; the test and what goes wrong are not in it.`,
      inputs: [
        input("Digging", "time", earth.digging_h[place[of]]),
        input("Laying", "time", earth.laying_h[place[of]]),
        input("Filling", "time", earth.filling_h[place[of]]),
      ],
      source: commonPractice,
    },
    (digging_h = 0, laying_h = 0, filling_h = 0) => digging_h + laying_h + filling_h,
  );
}

/** How much to open in a day, m: the least goes with the slow pace. */
export function dailyAccount({ earth }: Trench, { hoursADay_h }: TrenchSettings, of: Pace): Account {
  const slow = paceFor[of];
  return account(
    {
      formula: say`Working hours less an hour for the test (at most half of them), over the hours that a metre takes to dig, lay and half fill; never more than there is to dig.`,
      inputs: [
        input("Working hours", "time", hoursADay_h),
        input("Digging it all", "time", earth.digging_h[slow]),
        input("Laying it all", "time", earth.laying_h[slow]),
        input("Half filling it all", "time", halfFilled * earth.filling_h[slow]),
        input("Dug", "length", earth.dug_m),
      ],
      source: commonPractice,
    },
    (working_h = 0, digging_h = 0, laying_h = 0, filling_h = 0, dug_m = 0) =>
      dayOf_m(dug_m, digging_h + laying_h + filling_h, working_h),
  );
}

/** How many days that makes. */
export function daysAccount({ earth }: Trench, of: Pace): Account {
  return account(
    {
      formula: say`Everything dug over the length of a day, in whole days.`,
      inputs: [input("Dug", "length", earth.dug_m), input("In a day", "length", earth.daily_m[paceFor[of]])],
      source: "counted",
    },
    (dug_m = 0, day_m = 1) => (dug_m > 0 ? Math.ceil(dug_m / day_m) : 0),
  );
}

function byWhom({ tool, people, soil }: TrenchSettings): string {
  if (tool !== "hand") return tool === "trencher" ? "a chain trencher" : "an excavator";
  return `${people} ${people === 1 ? "person" : "people"} by hand, in ${soil}`;
}
