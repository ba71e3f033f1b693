import { type Account, type AccountInput, account, input } from "../account.ts";
import { type Phrase, say } from "../finding.ts";
import { giving, leanOf } from "./end-loads.ts";
import type { BlockLoads, DipLoad, EndLoads } from "./loads.ts";
import { gradeChange_n, hBrace, strut, tiedPost } from "./mechanics/end-statics.ts";
import { freePostDepth_m, sandySoil_papm } from "./mechanics/post-in-soil.ts";
import type { BlockTrellis } from "./trellis.ts";

/** The ends of a block's rows with their loads. */
export interface ToldEnd {
  readonly structure: BlockTrellis;
  readonly loads: BlockLoads;
}

const statics = "statics; the row's direction is horizontal";

/** How each number about the end of a row came about; null for what this kind of end does not have. */
export const endLoadAccounts: Readonly<Record<keyof EndLoads, (end: ToldEnd) => Account | null>> = {
  pull_n: (end) =>
    told(
      say`Tension of every wire at the end post, added up.`,
      end.structure.wires.map(({ wire }, i) =>
        input(`Wire ${i + 1}, ${wire.count} at its tension`, "force", wire.count * wire.tension_n),
      ),
      sum,
    ),
  coldestPull_n: (end) => told(say`Tension of every wire at the end post in the cold, added up.`, coldPulls(end), sum),
  moment_nm: (end) =>
    told(
      say`Pull of every wire in the cold times its height, added up, in newton metres.`,
      coldPulls(end).flatMap((pull, i) => [
        pull,
        input(`Height of wire ${i + 1}`, "length", end.structure.wires[i]?.height_m ?? 0),
      ]),
      (...n) => n.reduce((total, pull, i) => (i % 2 === 0 ? total + pull * (n[i + 1] ?? 0) : total), 0),
    ),
  tie_n: (end) =>
    tied(
      end,
      "tie_n",
      say`The pull at the tie that turns the post as much as all wires do, along the tie-back: H sin a / sin (a + b).`,
    ),
  anchorUplift_n: (end) =>
    tied(end, "uplift_n", say`The part of the tie-back's pull that lifts the anchor: tie sin b.`),
  anchorDrag_n: (end) =>
    tied(end, "drag_n", say`The part of the tie-back's pull that drags the anchor to the row: tie cos b.`),
  brace_n: (end) =>
    braced(
      end,
      end.structure.end.kind === "h-brace"
        ? say`The pull at the rail that turns the post as much as all wires do.`
        : say`The pull at the strut that turns the post as much as all wires do, along the strut: H / cos f.`,
      (held_n, height_m, inside_m) =>
        end.structure.end.kind === "h-brace"
          ? hBrace(held_n, height_m, inside_m).rail_n
          : strut(held_n, slope_deg(height_m, inside_m)).strut_n,
    ),
  diagonal_n: (end) => {
    const { kind } = end.structure.end;
    if (kind === "h-brace") {
      return braced(
        end,
        say`The pull at the rail, along the diagonal wire: H / cos t.`,
        (held_n, height_m, inside_m) => hBrace(held_n, height_m, inside_m).diagonal_n,
      );
    }
    if (kind !== "inside-brace") return null;
    return braced(
      end,
      say`The ground wire keeps the strut's foot from sliding: the pull at the strut.`,
      (held_n) => held_n,
    );
  },
  postThrust_n: (end) =>
    tied(end, "thrust_n", say`What pushes the post into the ground: tie sin b / sin a.`) ??
    braced(
      end,
      say`What lifts the end post, told below 0: pull times height over the distance inside.`,
      (held_n, height_m, inside_m) => (-held_n * height_m) / inside_m,
    ) ??
    told(say`Nothing pushes a single post down.`, [input("Push", "force", 0)], sum),
  atGround_n: (end) => {
    const held = heldInputs(end);
    const pull = input("Pull of all wires in the cold", "force", end.loads.end.coldestPull_n);
    if (held === null) return told(say`The soil must hold all of the pull.`, [pull], sum);
    return told(
      say`The pull of all wires less what tie-back or brace takes at its height; below 0 the foot is pushed outward.`,
      [pull, ...held],
      (pull_n = 0, moment_nm = 0, height_m = 1) => pull_n - moment_nm / height_m,
    );
  },
  freeDepth_m: ({ structure, loads: { end } }) =>
    end.freeDepth_m === null
      ? null
      : account(
          {
            formula: say`Depth of a free post: d = A/2 (1 + root of (1 + 4.36 h / A)), A = 2.34 P / (S b), S at a third of the depth; found by trial. Sandy soil, twice its strength since the post may give half an inch.`,
            source: "International Building Code 1807.3.2.1 and 1806.3.4; soil of table 1806.2, from memory",
            inputs: [
              input("Pull of all wires in the cold, P", "force", end.coldestPull_n),
              input("Height it acts at, h", "length", end.coldestPull_n === 0 ? 0 : end.moment_nm / end.coldestPull_n),
              input("Thickness of the post, b", "diameter", structure.endPost.diameter_mm ?? 100),
              input("Strength of the soil a metre of depth, kPa", "count", (giving * sandySoil_papm) / 1000),
            ],
          },
          (pull_n = 0, height_m = 0, diameter_mm = 1, soil_kpapm = 1) =>
            pull_n === 0 ? 0 : freePostDepth_m(pull_n, height_m, diameter_mm / 1000, soil_kpapm * 1000),
        ),
};

/** How the pull on a post in a dip came about, N. */
export function dipAccount(dip: DipLoad, coldestPull_n: number): Account {
  return told(
    say`Pull of all wires in the cold times the sine of the slope behind the post less that of the slope before it: T (sin f2 - sin f1).`,
    [
      input("Pull of all wires in the cold", "force", coldestPull_n),
      input("Slope before the post", "ratio", dip.before_ratio),
      input("Slope behind the post", "ratio", dip.after_ratio),
    ],
    (pull_n = 0, before = 0, after = 0) => gradeChange_n(pull_n, before, after),
  );
}

function told(formula: Phrase, inputs: readonly AccountInput[], by: (...numbers: number[]) => number): Account {
  return account({ formula, source: statics, inputs }, by);
}

function sum(...numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}

function coldPulls({ structure, loads }: ToldEnd): readonly AccountInput[] {
  return structure.wires.map(({ wire }, i) =>
    input(`Wire ${i + 1}, ${wire.count} in the cold`, "force", wire.count * (loads.wires[i]?.coldest_n ?? 0)),
  );
}

/** Moment and height that together make the pull which tie or brace holds; null where neither does. */
function heldInputs({ structure: { end }, loads }: ToldEnd): readonly AccountInput[] | null {
  const height_m = loads.end.tie_n !== null ? end.tie?.height_m : end.brace?.height_m;
  if (height_m === undefined) return null;
  return [
    input("Overturning moment at the ground, N m", "count", loads.end.moment_nm),
    input(loads.end.tie_n !== null ? "Height of the tie" : "Height of the brace", "length", height_m),
  ];
}

function tied(end: ToldEnd, which: keyof ReturnType<typeof tiedPost>, formula: Phrase): Account | null {
  const { tie } = end.structure.end;
  const held = heldInputs(end);
  if (tie === null || held === null || end.loads.end.tie_n === null) return null;
  return told(
    formula,
    [
      ...held,
      input("Post from the ground, a", "angle", leanOf(end.structure)),
      input("Tie-back from the ground, b", "angle", tie.angle_deg),
    ],
    (moment_nm = 0, height_m = 1, post_deg = 90, tie_deg = 45) =>
      tiedPost(moment_nm / height_m, post_deg, tie_deg)[which],
  );
}

function braced(
  end: ToldEnd,
  formula: Phrase,
  by: (held_n: number, height_m: number, inside_m: number) => number,
): Account | null {
  const { brace } = end.structure.end;
  const held = heldInputs(end);
  if (brace === null || held === null) return null;
  return told(
    formula,
    [...held, input("Brace, along the ground", "length", brace.inside_m)],
    (moment_nm = 0, height_m = 1, inside_m = 1) => by(moment_nm / height_m, height_m, inside_m),
  );
}

function slope_deg(height_m: number, inside_m: number): number {
  return (Math.atan2(height_m, inside_m) * 180) / Math.PI;
}
