import { type Phrase, quantity, say } from "../finding.ts";
import type { PipeSettings } from "../project/project.ts";
import type { SetSettings } from "../project/water-settings.ts";
import type { Delivery } from "./deliver.ts";
import type { WaterPart, WaterPartKind } from "./watering.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** Wire left at each end for the splice. Common practice, no source. */
const splice_m = 1;
/** Common and spare, beside one for each valve. */
const sharedWires = 2;

/**
 * The valves of the sets and what goes with them: a cock for each row, or for each set a valve in a box; regulators where they are asked for; a
 * controller with wire along the trench, one a valve, one common and one spare; a cap at the end of every hose.
 */
export function setParts(job: WateringJob, line: LineJob, delivery: Delivery): readonly WaterPart[] {
  const { pattern, sets } = delivery;
  const { control, regulator_kpa } = job.sets;
  const laterals = sets.flat();
  const isEachRow = pattern === "cock-a-row";
  const valves = isEachRow ? [cocks(job, laterals)] : [...setValves(job, delivery), ...boxes(sets.length, pattern)];
  const regulators =
    regulator_kpa === null ? [] : [regulatorPart(job, laterals, sets.length, isEachRow, regulator_kpa)];
  const electric = isEachRow || control === "hand" ? [] : [controller(sets.length), wire(line, delivery)];
  return [...valves, ...regulators, ...electric, flushCaps(job, laterals)];
}

/** How many valves a pattern has. */
export function valveCount({ pattern, sets }: Pick<Delivery, "pattern" | "sets">): number {
  return pattern === "cock-a-row" ? sets.flat().length : sets.length;
}

function cocks(job: WateringJob, laterals: readonly number[]): WaterPart {
  return {
    ...part("row-cock", "Row cocks", laterals.length, "one on the riser of each row, any set is opened by hand"),
    spec: ["ball valve, 3/4 in (25 mm)"],
    perRow: rowCounts(job, laterals),
    spare: 1,
  };
}

/** One for each set, of the size of the pipe behind it; equal ones together. */
function setValves({ sets: { control } }: WateringJob, delivery: Delivery): readonly WaterPart[] {
  const sizes = new Map<string, { readonly pipe: PipeSettings; count: number }>();
  delivery.sets.forEach((_, set) => {
    const pipe = pipeBehindValve(delivery, set);
    if (pipe === null) return;
    const known = sizes.get(pipe.size);
    if (known === undefined) sizes.set(pipe.size, { pipe, count: 1 });
    else known.count += 1;
  });
  return [...sizes.values()].map(({ pipe, count }) => ({
    ...part("set-valve", "Set valves", count, "one for each set of rows, where its own pipe begins; closed slowly"),
    article: setValveArticle(pipe, control),
    spec: [
      ...(control === "hand"
        ? say`ball or gate valve`
        : say`electric valve for the controller's low voltage, normally closed`),
      ...say`, for pipe ${quantity("diameter", pipe.outside_mm)} outside`,
    ],
  }));
}

/** What a set's valve is called in the price list. */
function setValveArticle(pipe: Pick<PipeSettings, "size">, control: SetSettings["control"]): string {
  return `set-valve-${control === "hand" ? "" : "electric-"}${pipe.size}`;
}

/** The widest pipe right behind a set's valve; where the set is a single row right there, the one before it. */
function pipeBehindValve({ lines: { trees }, segments, pipes }: Delivery, set: number): PipeSettings | null {
  const tree = trees[set];
  if (tree === undefined) return null;
  const at = tree.point.indexOf(tree.valve);
  const isBehind = (node: number): boolean => {
    let up = Number(tree.upstream[node]);
    while (up > at && tree.leg[up] === -1) up = Number(tree.upstream[up]);
    return up === at;
  };
  const pipeOf = (leg: number | undefined) =>
    leg === undefined || leg < 0 ? [] : (pipes[Number(segments.of[leg])] ?? []);
  const behind = tree.leg.flatMap((leg, node) => (node > at && isBehind(node) ? pipeOf(leg) : []));
  const choice = behind.length > 0 ? behind : [pipeOf(tree.leg[at])].flat();
  return choice.reduce<PipeSettings | null>(
    (widest, pipe) => (widest === null || pipe.inside_mm > widest.inside_mm ? pipe : widest),
    null,
  );
}

/** Valves side by side that a large box has room for. Common practice, no source. */
const sideBySide = 3;

/** At the source the valves stand together. */
function boxes(count: number, pattern: Delivery["pattern"]): readonly WaterPart[] {
  const isTogether = pattern === "valves-at-source" && count > 1;
  const bears = "a lid that bears a wheel, and gravel under it";
  return [
    isTogether
      ? {
          ...part("valve-box", "Valve boxes", Math.ceil(count / sideBySide), "over the set valves, side by side"),
          article: `valve-box-for-${sideBySide}`,
          spec: [`with room for ${sideBySide} valves, ${bears}`],
        }
      : { ...part("valve-box", "Valve boxes", count, "one over each set valve"), spec: [`with ${bears}`] },
  ];
}

function regulatorPart(
  job: WateringJob,
  laterals: readonly number[],
  sets: number,
  isEachRow: boolean,
  regulator_kpa: number,
): WaterPart {
  const where = isEachRow ? "one behind each row's cock" : "one behind each set's valve";
  return {
    ...part("set-regulator", "Set regulators", isEachRow ? laterals.length : sets, `${where}, holds the pressure down`),
    article: regulatorArticle(regulator_kpa),
    spec: say`set to ${quantity("pressure", regulator_kpa)}, for the flow of a ${isEachRow ? "row" : "set"}`,
    perRow: isEachRow ? rowCounts(job, laterals) : null,
  };
}

/** What a set's regulator is called in the price list. */
function regulatorArticle(regulator_kpa: number): string {
  return `set-regulator-${Math.round(regulator_kpa)}kpa`;
}

function controller(sets: number): WaterPart {
  return {
    ...part(
      "controller",
      "Controllers",
      1,
      "opens one set after the other; mains wiring is work for a licensed electrician",
    ),
    spec: [`${sets} stations or more, low voltage, rain-proof`],
  };
}

function wire(line: LineJob, delivery: Delivery): WaterPart {
  const pieces_m = valveWires_m(line, delivery);
  return {
    ...part(
      "valve-wire",
      "Valve wire",
      pieces_m.reduce((sum_m, each_m) => sum_m + each_m, 0),
      "along the trench: one a valve, one common, one spare",
    ),
    spec: ["for direct burial, colours apart, with splices that keep water out"],
    unit: "m",
    pieces_m,
  };
}

/** From the source to each valve, and common and spare to all of them along every leg on the way. */
function valveWires_m({ upstream, length_m }: LineJob, { lines: { trees } }: Delivery): readonly number[] {
  const passed = new Set<number>();
  const own_m = trees.map(({ valve }) => {
    let sum_m = 0;
    for (let at = valve; at > 0; at = Number(upstream[at])) {
      passed.add(at);
      sum_m += Number(length_m[at]);
    }
    return sum_m + 2 * splice_m;
  });
  const all_m = [...passed].reduce((sum_m, point) => sum_m + Number(length_m[point]), 2 * splice_m);
  return [...own_m, ...new Array<number>(sharedWires).fill(all_m)];
}

function flushCaps(job: WateringJob, laterals: readonly number[]): WaterPart {
  const outsides_mm = [...new Set(job.blocks.map(({ drip }) => drip.hoseOutside_mm))];
  return {
    ...part("flush-cap", "Flush caps", laterals.length, "one at the end of each row's hose, opened to flush it"),
    spec: outsides_mm.flatMap(
      (each, i): Phrase => say`${i === 0 ? "for hose " : " and "}${quantity("diameter", each)} outside`,
    ),
    perRow: rowCounts(job, laterals),
    spare: 1,
  };
}

function rowCounts({ laterals }: WateringJob, some: readonly number[]): readonly number[] {
  const counts = new Array<number>(laterals.row.reduce((most, row) => Math.max(most, row + 1), 0)).fill(0);
  for (const lateral of some) {
    const row = Number(laterals.row[lateral]);
    counts[row] = Number(counts[row]) + 1;
  }
  return counts;
}

function part(kind: WaterPartKind, item: string, quantityOf: number, purpose: string): WaterPart {
  return {
    kind,
    article: kind,
    item,
    spec: [],
    unit: "pieces",
    quantity: quantityOf,
    perRow: null,
    pieces_m: [],
    purpose,
    spare: 0,
  };
}
