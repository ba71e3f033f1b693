import { type Phrase, quantity, say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Json } from "../project/project.ts";
import type { DripSettings, SetSettings, WaterSettings } from "../project/water-settings.ts";
import type { AdviceNumbers } from "./advice-numbers.ts";
import { emitterLaw } from "./block-job.ts";
import { largerFlows, smallerFlows, wantsFinerFilter } from "./emitter-flows.ts";
import { widerHoses } from "./hose-sizes.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** A change of the settings and what it makes of the job. */
export interface Change {
  readonly id: string;
  /** By what comes of it. */
  readonly name: (before: AdviceNumbers, after: AdviceNumbers) => Phrase;
  readonly edits: readonly (readonly [path: string, value: Json])[];
  /** What goes with it; null: nothing. */
  readonly note: Phrase | null;
  readonly job: WateringJob;
}

/** Longer hours: as many as the month that needs most takes, whole ones, a day at most. */
export function longerHours(job: WateringJob, before: AdviceNumbers): readonly Change[] {
  const { hoursADay_h } = job.water;
  const needed_h = Math.max(before.usual_h ?? 0, before.peak_h ?? 0);
  const hours_h = Math.min(24, Math.ceil(needed_h - 1e-6));
  if (needed_h <= hoursADay_h || hours_h <= hoursADay_h) return [];
  return [
    {
      id: "longer-hours",
      name: () => say`Water ${quantity("time", hours_h)} a day instead of ${quantity("time", hoursADay_h)}`,
      edits: [["water.hoursADay", hours_h]],
      note: say`By night as well: a controller opens the valves, and whoever else uses the water has to agree.`,
      job: withWater(job, { hoursADay_h: hours_h }),
    },
  ];
}

/** More sets: as many as the water feeds where a number is set, and over borders where sets may not cross them. */
export function moreSets(job: WateringJob): readonly Change[] {
  const { count, follow } = job.sets;
  const name = ({ sets: one }: AdviceNumbers, { sets }: AdviceNumbers) =>
    sets === one
      ? say`Split the rows otherwise into ${setsNamed(sets)}`
      : say`Water in ${setsNamed(sets)} instead of ${one}`;
  const change = (edits: Change["edits"], sets: Partial<SetSettings>): Change => ({
    id: "more-sets",
    name,
    edits,
    note: say`More sets take longer one after another.`,
    job: { ...job, sets: { ...job.sets, ...sets } },
  });
  return [
    ...(count === null ? [] : [change([["sets.count", null]], { count: null })]),
    ...(follow === "rows"
      ? []
      : [
          change(
            [
              ["sets.follow", "rows"],
              ["sets.count", null],
            ],
            { follow: "rows", count: null },
          ),
        ]),
  ];
}

/** Where nothing but time is missing: the next larger emitters in every block. */
export function largerEmitters(job: WateringJob, { missing }: AdviceNumbers): readonly Change[] {
  if (missing.head_m > 0 || missing.usual_h + missing.peak_h === 0) return [];
  return [0, 1].flatMap((step) => {
    const change = otherEmitters(job, "larger-emitters", largerFlows, step);
    return change === null ? [] : [{ ...change, note: say`Each set takes more water at a time.` }];
  });
}

/** The next smaller emitters, in every block. */
export function smallerEmitters(job: WateringJob): readonly Change[] {
  return [0, 1, 2].flatMap((step) => {
    const change = otherEmitters(job, "smaller-emitters", smallerFlows, step);
    return change === null ? [] : [change];
  });
}

/** Emitters a step or more away from those there are, in every block; null where one has no such step. */
function otherEmitters(
  job: WateringJob,
  id: string,
  of: (flow_lph: number) => readonly number[],
  step: number,
): Change | null {
  const now = job.blocks.map(({ drip }) => drip.emitterFlow_lph);
  const flows = now.flatMap((flow_lph) => of(flow_lph)[step] ?? []);
  const [first_lph] = flows;
  const [now_lph = 0] = now;
  if (first_lph === undefined || flows.length < now.length) return null;
  const isOne = now.every((flow_lph) => flow_lph === now_lph);
  return {
    id,
    name: () =>
      isOne
        ? say`Emitters of ${quantity("flow", first_lph)} instead of ${quantity("flow", now_lph)}`
        : say`Emitters of another size in every block`,
    edits: dripEdits(job, "emitterFlow", flows),
    note: flows.some(wantsFinerFilter)
      ? say`Passages this narrow clog sooner: they want a finer filter, 120 to 200 mesh (0.13 to 0.075 mm), and its loss in the head works. Sets run longer.`
      : say`Sets run longer for the same water.`,
    job: withDrip(job, (_, block) => ({ emitterFlow_lph: flows[block] ?? first_lph })),
  };
}

/** Pipes chosen for the water instead of as set. */
export function chosenPipes(job: WateringJob): readonly Change[] {
  if (job.sets.sizing === "chosen") return [];
  return [
    {
      id: "larger-pipe",
      name: () => say`Pipes as wide as the rows need, chosen at least cost, instead of ${job.pipe.size} everywhere`,
      edits: [["sets.sizing", "chosen"]],
      note: null,
      job: { ...job, sets: { ...job.sets, sizing: "chosen" } },
    },
  ];
}

/** The next wider hoses, in every block. */
export function widerHose(job: WateringJob): readonly Change[] {
  const widest_mm = job.blocks.reduce((most, { drip }) => Math.max(most, drip.hoseInside_mm), 0);
  return widerHoses(widest_mm).map(({ inside_mm, outside_mm }) => ({
    id: "wider-hose",
    name: () => say`Hose of ${quantity("diameter", inside_mm)} inside, ${quantity("diameter", outside_mm)} outside`,
    edits: [
      ["drip.hoseInside", inside_mm],
      ["drip.hoseOutside", outside_mm],
    ],
    note: say`Clips, couplings and row ends have to be of its outside diameter.`,
    job: withDrip(job, () => ({ hoseInside_mm: inside_mm, hoseOutside_mm: outside_mm })),
  }));
}

/** Pressure-compensating emitters in place of plain ones, in every block that has them. */
export function compensatingEmitters(job: WateringJob): readonly Change[] {
  if (job.blocks.every(({ drip }) => drip.emitterKind === "compensating")) return [];
  const [least_kpa, most_kpa] = job.blocks.reduce(
    ([least, most], { drip }) => [Math.max(least, drip.emitterLeast_kpa), Math.min(most, drip.emitterMost_kpa)],
    [0, Infinity],
  );
  return [
    {
      id: "compensating-emitters",
      name: () => say`Pressure-compensating emitters`,
      edits: [
        ["drip.emitterKind", "compensating"],
        ["drip.emitterExponent", null],
      ],
      note: say`They give their flow from ${quantity("pressure", least_kpa)} to ${quantity("pressure", most_kpa)}: check that against the ones you buy.`,
      job: withDrip(job, ({ emitterKind }) =>
        emitterKind === "compensating" ? {} : { emitterKind: "compensating", emitterExponent: 0 },
      ),
    },
  ];
}

/** Regulators at the sets' valves, or the rows' cocks, that let through what the worst lateral needs. */
export function higherRegulators(job: WateringJob, { laterals }: Watering): readonly Change[] {
  const { regulator_kpa } = job.sets;
  const { line } = job;
  if (regulator_kpa === null || line === null) return [];
  const wanted_m = laterals.reduce((most_m, { inlet_m }, i) => {
    const point = job.laterals.point[i] ?? -1;
    return point < 0 ? most_m : Math.max(most_m, inlet_m - (line.height_m[point] ?? 0));
  }, 0);
  // Up to a metre is lost between a set's valve and its last row before sizes are chosen by what is left.
  return [1, 5].flatMap((lost_m) => {
    const outlet_kpa = Math.ceil(pressureOf_kpa(wanted_m + lost_m) / 10) * 10;
    if (outlet_kpa <= regulator_kpa) return [];
    return [
      {
        id: "higher-regulators",
        name: () =>
          say`Regulators of ${quantity("pressure", outlet_kpa)} instead of ${quantity("pressure", regulator_kpa)}`,
        edits: [["sets.regulator", outlet_kpa] as const],
        note: say`Hose and emitters have to stand that.`,
        job: { ...job, sets: { ...job.sets, regulator_kpa: outlet_kpa } },
      },
    ];
  });
}

/** "1 set", "4 sets" */
export function setsNamed(count: number): string {
  return `${count} ${count === 1 ? "set" : "sets"}`;
}

/** The settings of the water changed in the job. */
export function withWater(job: WateringJob, change: Partial<WaterSettings>): WateringJob {
  return { ...job, water: { ...job.water, ...change } };
}

/** The drip settings of every block changed in the job, and the law of its emitters with them. */
function withDrip(job: WateringJob, change: (drip: DripSettings, block: number) => Partial<DripSettings>): WateringJob {
  return {
    ...job,
    blocks: job.blocks.map((block, i) => {
      const drip = { ...block.drip, ...change(block.drip, i) };
      return { ...block, drip, emitter: emitterLaw(drip) };
    }),
  };
}

/** One setting of every block: for all at once where they are the same. */
function dripEdits(job: WateringJob, name: string, values: readonly number[]): Change["edits"] {
  const [first = 0] = values;
  if (values.every((value) => value === first)) return [[`drip.${name}`, first]];
  return job.blocks.map(({ id }, i) => [`blocks.${id}.drip.${name}`, values[i] ?? first]);
}
