import { type Account, account, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { TrenchSettings } from "../project/project.ts";
import { cutOf_m3, pipeVolume_m3 } from "./earth.ts";
import { swells } from "./paces.ts";
import { depthOf } from "./profile.ts";
import { heapOf, heapSlope_ratio, prism_m3, sectionArea_m2, topWidth_m } from "./section.ts";
import type { Trench } from "./trench.ts";
import { bySize } from "./trench-line.ts";
import { betweenPipes_m, toolWidths } from "./trench-width.ts";

const handbook = "calculation handbook, section 7";

/** How wide the trench is at its bottom, m. */
export function widthAccount(
  { abreast_mm }: Pick<Trench, "abreast_mm">,
  { width_m, tool }: Pick<TrenchSettings, "width_m" | "tool">,
): Account {
  if (width_m !== null) {
    return account(
      { formula: say`As set.`, inputs: [input("Width", "length", width_m)], source: commonPractice },
      (w) => Number(w),
    );
  }
  const { least_m, beside_m } = toolWidths[tool];
  const isOne = abreast_mm.length === 1;
  const outside_m = abreast_mm.map((each_mm) => each_mm / 1000);
  return account(
    {
      formula: isOne
        ? say`What the tool digs, or the pipe and room to work beside it where that is more.`
        : say`What the tool digs, or the pipes where they take most room side by side, with earth between them, and room to work beside them where that is more.`,
      inputs: [
        input("Dug by the tool", "length", least_m),
        isOne ? input("Pipe outside", "length", outside_m[0] ?? 0) : inputs("Pipes outside", "length", outside_m),
        ...(isOne ? [] : [input("Earth between them", "length", betweenPipes_m * (outside_m.length - 1))]),
        input(isOne ? "Room beside it" : "Room beside them", "length", beside_m),
      ],
      source: commonPractice,
    },
    (tool_m = 0, ...rest_m) =>
      Math.max(
        tool_m,
        rest_m.reduce((sum_m, each_m) => sum_m + each_m, 0),
      ),
  );
}

/** How wide it is at the top where it is deepest, m. */
export function topWidthAccount({ earth }: Trench, { sideSlope_ratio }: TrenchSettings): Account {
  return account(
    {
      formula: say`Width at the bottom, and on both sides the slope of the sides times the depth.`,
      inputs: [
        input("Width at the bottom", "length", earth.width_m),
        input("Greatest depth", "length", earth.deepest_m),
        input("Sides, horizontal over vertical", "count", sideSlope_ratio),
      ],
      source: geometry,
    },
    (width_m = 0, depth_m = 0, slope = 0) => topWidth_m(width_m, depth_m, slope),
  );
}

/** How deep the trench is at constant cover, m; with a fall it is deeper, never shallower. */
export function depthAccount(
  { cover_m, thickest_mm, pipes }: Pick<Trench, "cover_m" | "thickest_mm" | "pipes">,
  { bedding_m, frostDepth_m }: TrenchSettings,
): Account {
  const isOne = pipes.every(({ pipe }) => pipe.outside_mm === thickest_mm);
  return account(
    {
      formula: isOne
        ? say`Ground over the pipe, the pipe, and the bedding under it.`
        : say`Ground over the pipe, the thickest pipe, and the bedding under it: the trench is as deep for the thinner ones.`,
      inputs: [
        input("Over the pipe", "length", cover_m),
        input("Pipe outside", "length", thickest_mm / 1000),
        input("Bedding", "length", bedding_m),
        remark("Frost depth", frostDepth_m === null ? "not given" : say`${quantity("length", frostDepth_m)}`),
      ],
      source: `${handbook}; cover: NRCS conservation practice standard 430, where none is set`,
    },
    (over_m = 0, outside_m = 0, under_m = 0) => depthOf({ cover_m: over_m, outside_m, bedding_m: under_m }),
  );
}

/** How much is dug, m3 as it lies. */
export function cutAccount({ profiles, leads_m, earth }: Trench, { sideSlope_ratio }: TrenchSettings): Account {
  const branches = profiles.map((profile) => cutOf_m3(profile, earth.width_m, sideSlope_ratio));
  const leads_m3 = earth.cut_m3 - branches.reduce((sum_m3, each_m3) => sum_m3 + each_m3, 0);
  const area_m2 = sectionArea_m2(earth.width_m, earth.deepest_m, sideSlope_ratio);
  return account(
    {
      formula: say`From station to station the prism between two depths, L (W (a + b) / 2 + m (a² + a b + b²) / 3), added up over the branches, and the leads from the tees to their end posts at the depth of their tee.`,
      inputs: [
        inputs("Branches", "earth", branches),
        input("Leads", "earth", leads_m3),
        remark("Width at the bottom W", say`${quantity("length", earth.width_m)}`),
        remark("Sides m, horizontal over vertical", String(sideSlope_ratio)),
        remark("Section where it is deepest", say`${quantity("area", area_m2)}`),
        remark(
          "Leads",
          say`${quantity(
            "length",
            leads_m.reduce((sum_m, each_m) => sum_m + each_m, 0),
          )}`,
        ),
      ],
      source: geometry,
    },
    (main_m3 = 0, lead_m3 = 0) => main_m3 + lead_m3,
  );
}

/** What the pipes take of the trench, m3. */
export function pipeVolumeAccount({ pipes, abreast_mm }: Trench): Account {
  const sizes = bySize(pipes);
  const all =
    sizes.length === 0
      ? [{ outside_mm: abreast_mm[0] ?? 0, own: [] }]
      : sizes.map(({ pipe, own }) => ({ ...pipe, own }));
  return account(
    {
      formula:
        sizes.length > 1
          ? say`Of each size the length of the pipe along the ground times its outer section, π D² / 4, added up.`
          : say`Length of the pipe along the ground times its outer section, π D² / 4.`,
      inputs: all.flatMap(({ outside_mm, own }) => [
        inputs(
          "Branches",
          "length",
          own.map(({ length_m }) => length_m),
        ),
        input("Pipe outside", "length", outside_mm / 1000),
      ]),
      source: geometry,
    },
    (...numbers) =>
      numbers.reduce((sum_m3, length_m, i) => {
        return i % 2 === 0 ? sum_m3 + pipeVolume_m3(1000 * Number(numbers[i + 1]), length_m) : sum_m3;
      }, 0),
  );
}

/** Sand or fine earth under the pipe, m3. */
export function beddingAccount({ earth }: Trench, { bedding_m, sideSlope_ratio }: TrenchSettings): Account {
  return account(
    {
      formula: say`Everything dug, over the width of the trench and the depth of the bedding.`,
      inputs: [
        input("Dug", "length", earth.dug_m),
        input("Width at the bottom", "length", earth.width_m),
        input("Depth of the bedding", "length", bedding_m),
        input("Sides, horizontal over vertical", "count", sideSlope_ratio),
      ],
      source: handbook,
    },
    (dug_m = 0, width_m = 0, depth_m = 0, slope = 0) => prism_m3(width_m, depth_m, depth_m, slope, dug_m),
  );
}

/** What goes back in, m3 as it lies. */
export function backfillAccount({ earth }: Trench): Account {
  return account(
    {
      formula: say`What is dug, less the pipe and the bedding.`,
      inputs: [
        input("Dug", "earth", earth.cut_m3),
        input("Pipe", "earth", earth.pipe_m3),
        input("Bedding", "earth", earth.bedding_m3),
      ],
      source: handbook,
    },
    (cut_m3 = 0, pipe_m3 = 0, bedding_m3 = 0) => cut_m3 - pipe_m3 - bedding_m3,
  );
}

/** What is left over once the fill has settled, m3 as it lay. */
export function surplusAccount({ earth }: Trench): Account {
  return account(
    {
      formula: say`As much as the pipe and the bedding take; mounded over the trench it makes up for settling.`,
      inputs: [input("Pipe", "earth", earth.pipe_m3), input("Bedding", "earth", earth.bedding_m3)],
      source: handbook,
    },
    (pipe_m3 = 0, bedding_m3 = 0) => pipe_m3 + bedding_m3,
  );
}

/** What lies beside the trench, m3 loose. */
export function looseAccount({ earth }: Trench, { soil, swell_ratio }: TrenchSettings): Account {
  return account(
    {
      formula: say`What is dug, and the swell of the soil when it is thrown out.`,
      inputs: [input("Dug", "earth", earth.cut_m3), input("Swell", "ratio", earth.swell_ratio), remark("Soil", soil)],
      source:
        swell_ratio === null ? `US Army FM 5-434, from memory: ${soil} swells by ${100 * swells[soil]} %` : "as set",
    },
    (cut_m3 = 0, swell = 0) => cut_m3 * (1 + swell),
  );
}

/** How high the heap beside the trench is, and how broad its foot, m. */
export function heapAccount({ earth }: Trench, of: "height" | "base"): Account {
  return account(
    {
      formula:
        of === "height"
          ? say`The square root of the loose earth a metre over the slope of the heap, ${heapSlope_ratio} to 1.`
          : say`Twice the slope of the heap, ${heapSlope_ratio} to 1, times its height: the square root of the loose earth a metre over that slope.`,
      inputs: [input("Loose earth", "earth", earth.loose_m3), input("Dug", "length", earth.dug_m)],
      source: `${geometry}; slope of the heap ${commonPractice}`,
    },
    (loose_m3 = 0, dug_m = 0) => heapOf(dug_m > 0 ? loose_m3 / dug_m : 0)[of === "height" ? "height_m" : "base_m"],
  );
}
