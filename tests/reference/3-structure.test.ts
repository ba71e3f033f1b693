import { describe, expect, it } from "vitest";
import { si } from "../../src/core/project/si.ts";
import { linePostStations } from "../../src/core/rows/line-posts.ts";
import { blockTrellis } from "../../src/core/trellis/block-trellis.ts";
import { endAssembly } from "../../src/core/trellis/end-assembly.ts";
import { postLayout } from "../../src/core/trellis/post-layout.ts";
import { rowParts } from "../../src/core/trellis/row-parts.ts";
import { createRowSettings, createTrellisSettings } from "../support/create-project.ts";
import { createBlock, createRows } from "../support/create-rows.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 3 (line posts) and the geometry of its checks 2-23, 2-24 and 2-26 as the structure has it. */

const published: Source = {
  computedAsPublished: "university extension article on trellis materials, as the handbook quotes it",
};
const geometry: Source = { computed: "geometry" };
const triangle_m = 1e-5;
const feet = (count: number) => si("length", `${count} ft`);

/** Line posts of a row of 448 ft in bays of equal length, the number of bays nearest to what is asked. */
function linePosts(vineSpacing_ft: number, bay_vines: number): number {
  const spacing_m = feet(vineSpacing_ft);
  return linePostStations(
    { from_m: 0, to_m: feet(448), firstVine_m: spacing_m / 2, vines: Math.floor(448 / vineSpacing_ft), gridIndex: 0 },
    createRowSettings({ vineSpacing_m: spacing_m, bay_vines, bays: "equal" }),
    [],
  ).length;
}

describe("3 line posts in bays of equal length: the nearest number of bays", () => {
  it(titled("3-1 448 ft at 28 ft: 16 bays; 165 line posts and 22 end posts in 11 rows", published), () => {
    expect(linePosts(7, 4)).toBe(15);
    expect(11 * linePosts(7, 4)).toBe(165);
    const rows = createRows(...Array.from({ length: 11 }, () => ({ length_m: feet(448), linePosts: 15 })));
    const block = createBlock();
    const structure = blockTrellis(block);
    const ends = rows.rows.flatMap((row) =>
      rowParts(row, block, structure).filter(({ part }) => part.kind === "end-post"),
    );
    expect(ends.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(22);
  });

  it(
    titled("3-2 448 ft at 24 ft: the published 18 bays are longer than asked, ours is one more a row", published),
    () => {
      const published_posts = 11 * (Math.floor(448 / 24) - 1);
      expect(published_posts).toBe(187);
      expect(11 * linePosts(6, 4) - published_posts).toBe(11);
    },
  );

  it(titled("3-3 448 ft at no more than 24 ft: 19 bays, 198 line posts", geometry), () => {
    expect(11 * linePosts(6, 4)).toBe(198);
  });
});

describe("2.5 where ends stand", () => {
  const settings = createTrellisSettings().endAssembly;

  it(titled("2-23 a post leaning 60 degrees, tied at 1.83 m and 60 degrees", geometry), () => {
    const leaning = { ...settings, kind: "leaning", postAngle_deg: 60, leanDirection: "out" } as const;
    const { tie } = endAssembly(leaning, 1.83, 2.1131);
    expect(Math.abs(Number(tie?.postOut_m) - 1.05655)).toBeLessThan(triangle_m);
    expect(Math.abs(Number(tie?.length_m) - 2.1131)).toBeLessThan(triangle_m);
    expect(tie?.angle_deg).toBeCloseTo(60, 3);
  });

  it(titled("2-24 a post leaning 70 degrees, tied at 1.8 m and 45 degrees", geometry), () => {
    const leaning = { ...settings, kind: "leaning", postAngle_deg: 70, leanDirection: "out" } as const;
    expect(endAssembly(leaning, 1.8, 2.45515).tie?.angle_deg).toBeCloseTo(45, 3);
    const bare = { ...createTrellisSettings().endPost, embedment_m: 0, above_m: 0 };
    const post = postLayout("end-post", bare, 1.8, 70, { postLengths_m: [], frostDepth_m: null });
    expect(Math.abs(post.length_m - 1.91552)).toBeLessThan(triangle_m);
  });

  it(titled("2-26 the diagonal of an H-brace 1.5 m high and 2.4 m long", geometry), () => {
    const { brace } = endAssembly({ ...settings, kind: "h-brace", braceHeight_m: 1.5, braceLength_m: 2.4 }, 1.8, 1.5);
    expect(brace?.angle_deg).toBeCloseTo(32.00538, 5);
    expect(brace?.diagonal_m).toBeCloseTo(2.830194, 6);
  });
});
