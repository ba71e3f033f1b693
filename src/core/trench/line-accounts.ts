import { type Account, account, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import type { PipeSettings, TrenchSettings } from "../project/project.ts";
import { bell_m, sticksFor, sticksOf } from "./branch-pipes.ts";
import { held_l } from "./low-points.ts";
import { blockFace_m2, blockSafety, thrust_n } from "./thrust.ts";
import type { Branch, LaidPipe, ProfilePoint, Sleeve, Thrust, Trench } from "./trench.ts";

const handbook = "calculation handbook, section 7";

/** How long the trench is in plan, m. */
export function trenchLengthAccount({ profiles }: Trench): Account {
  return account(
    {
      formula: say`The branches of the line, each from the tee it leaves by to its end, horizontal.`,
      inputs: [
        inputs(
          "Branches",
          "length",
          profiles.map(({ station_m }) => station_m.at(-1) ?? 0),
        ),
      ],
      source: geometry,
    },
    (length_m) => Number(length_m),
  );
}

/** How long it is along the ground, m; null where heights are missing. */
export function groundLengthAccount({ profiles, groundLength_m, length_m }: Trench): Account | null {
  if (groundLength_m === null) return null;
  return account(
    {
      formula: say`The branches along the ground, from heights about a post spacing apart.`,
      inputs: [
        inputs(
          "Branches",
          "length",
          profiles.map(({ slopeStation_m }) => slopeStation_m.at(-1) ?? 0),
        ),
        remark("Horizontal", say`${quantity("length", length_m)}`),
      ],
      source: geometry,
    },
    (ground_m) => Number(ground_m),
  );
}

/** Everything that is dug, m. */
export function dugAccount({ profiles, leads_m }: Trench): Account {
  return account(
    {
      formula: say`The branches of the line, and from every tee that is outside its end post on to the post.`,
      inputs: [
        inputs(
          "Branches",
          "length",
          profiles.map(({ station_m }) => station_m.at(-1) ?? 0),
        ),
        inputs(
          "Leads",
          "length",
          leads_m.filter((each_m) => each_m > 0),
        ),
      ],
      source: geometry,
    },
    (line_m = 0, lead_m = 0) => line_m + lead_m,
  );
}

/** How much of a pipe is laid, m along the ground. */
export function laidAccount({ branches, pipes, isSized }: Trench, { size }: Pick<PipeSettings, "size">): Account {
  return account(
    {
      formula: say`Every run of it along the ground, from where it begins to where the size changes or it ends.`,
      inputs: pipes
        .filter(({ pipe }) => pipe.size === size)
        .map((laid) => input(placeOf(laid, branches, isSized), "length", laid.length_m)),
      source: geometry,
    },
    (...lengths_m) => lengths_m.reduce((sum_m, each_m) => sum_m + each_m, 0),
  );
}

/** How many sticks or coils of a pipe are laid. */
export function sticksAccount({ branches, pipes, isSized }: Trench, pipe: PipeSettings): Account {
  const isCoiled = pipe.joint === "barbed";
  const own = pipes.filter((laid) => laid.pipe.size === pipe.size);
  return account(
    {
      formula: isCoiled
        ? say`The branches along the ground over the length of a coil, in whole coils: a coil goes on from branch to branch.`
        : say`Every branch by itself, laid end to end: each stick after the first goes into the bell before it, and a stick is started for what is left.`,
      inputs: [
        ...own.map((laid) => input(placeOf(laid, branches, isSized), "length", laid.length_m)),
        remark(isCoiled ? "A coil" : "A stick", say`${quantity("length", pipe.stick_m)}`),
        ...(isCoiled ? [] : [remark("In the bell", say`${quantity("length", bell_m(pipe))}`)]),
      ],
      source: commonPractice,
    },
    (...lengths_m) =>
      isCoiled
        ? sticksOf(lengths_m.map((length_m) => ({ length_m, sticks: length_m / pipe.stick_m, joints: 0, waste_m: 0 })))
        : lengths_m.reduce((sum, length_m) => sum + sticksFor(length_m, pipe.stick_m, bell_m(pipe)), 0),
  );
}

/** "Branch a", "Line of set 2, branches main and a". */
function placeOf({ line, spans }: LaidPipe, branches: readonly Branch[], isSized: boolean): string {
  const names = [...new Set(spans.map(({ branch }) => branches[branch]?.name ?? String(branch)))];
  const where = `${names.length === 1 ? "branch" : "branches"} ${names.join(" and ")}`;
  if (!isSized) return `${where.charAt(0).toUpperCase()}${where.slice(1)}`;
  return `${line === 0 ? "Main line" : `Line of set ${line}`}, ${where}`;
}

/** Pipe that is bought and not laid, m. */
export function wasteAccount({ pipes }: Trench): Account {
  return account(
    {
      formula: say`Of every branch its sticks less its length: what is cut off the last one, and what goes into bells.`,
      inputs: [
        inputs(
          "Branches",
          "length",
          pipes.map(({ waste_m }) => waste_m),
        ),
      ],
      source: commonPractice,
    },
    (waste_m) => Number(waste_m),
  );
}

/** The litres of pipe that stay full behind a low point. */
export function trappedAccount({ full, by_m }: ProfilePoint): Account {
  return account(
    {
      formula: say`Length of pipe that lies below the lower shoulder, less what drains within it take, times its inner section, π d² / 4.`,
      inputs: [
        ...full.flatMap(({ length_m, inside_mm }) => [
          input("Pipe that stays full", "length", length_m),
          input("Pipe inside", "diameter", inside_mm),
        ]),
        remark("Below the lower shoulder", say`${quantity("length", by_m)}`),
      ],
      source: handbook,
    },
    (...numbers) =>
      numbers.reduce((sum_l, length_m, i) => {
        return i % 2 === 0 ? sum_l + held_l({ length_m, inside_mm: Number(numbers[i + 1]) }) : sum_l;
      }, 0),
  );
}

/** How hard water pushes, N. */
export function thrustAccount({ angle_deg, outside_mm }: Thrust, { testPressure_kpa }: TrenchSettings): Account {
  return account(
    {
      formula:
        angle_deg === null
          ? say`Pressure times the outer section of the pipe.`
          : say`Twice the pressure times the outer section of the pipe times the sine of half the angle.`,
      inputs: [
        input("Highest pressure, in test or work", "pressure", testPressure_kpa),
        input("Pipe outside", "diameter", outside_mm),
        ...(angle_deg === null ? [] : [input("Angle", "angle", angle_deg)]),
      ],
      source: `T = 2 P A sin(θ / 2), T = P A; outside diameter for gasketed joints; ${handbook}`,
    },
    (pressure_kpa = 0, pipe_mm = 0, turned_deg) => thrust_n(pressure_kpa, pipe_mm, turned_deg ?? null),
  );
}

/** The face of a thrust block, m2. */
export function faceAccount({ force_n }: Thrust, { soilBearing_kpa }: TrenchSettings): Account {
  return account(
    {
      formula: say`What the soil must take over what it bears, with ${blockSafety} times the face to be safe.`,
      inputs: [input("Push", "force", force_n), input("Soil bears", "pressure", soilBearing_kpa)],
      source: handbook,
    },
    (push_n = 0, bears_kpa = 1) => blockFace_m2(push_n, bears_kpa),
  );
}

/** All sleeves together, m. */
export function sleevesAccount(sleeves: readonly Sleeve[]): Account {
  return account(
    {
      formula: say`Every crossing over what is crossed and a little past its edges, once for each pipe that goes through.`,
      inputs: [
        inputs(
          "Crossings",
          "length",
          sleeves.flatMap(({ length_m, outside_mm }) => outside_mm.map(() => length_m)),
        ),
      ],
      source: `${geometry}; past the edges ${commonPractice}`,
    },
    (length_m) => Number(length_m),
  );
}
