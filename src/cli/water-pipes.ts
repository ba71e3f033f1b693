import {
  formatQuantity,
  type Plan,
  pipeName,
  pressureOf_kpa,
  text,
  totalHead,
  type UnitSystem,
} from "../core/index.ts";
import { table } from "./table.ts";
import { wrapped } from "./wrapped.ts";

/** Pipes of the main line and the sets, where the head goes, and what each pattern of valves comes to. */
export function waterPipes(plan: Plan, units: UnitSystem): string {
  return `${pipes(plan, units)}${heads(plan, units)}${patterns(plan, units)}`;
}

function pipes({ watering: watered }: Plan, units: UnitSystem): string {
  const watering = watered?.watering ?? null;
  if (watering === null || watering.pipes.length === 0) return "";
  const fastest = watering.pipes.map((_, pipe) =>
    watering.sets.reduce((most, { nodes }) => {
      return nodes.pipe.reduce(
        (own, each, i) => (each === pipe ? Math.max(own, nodes.velocity_mps[i] ?? 0) : own),
        most,
      );
    }, 0),
  );
  // Pieces of one size of one line stand in one line of the table.
  const kinds = new Map<string, { line: number; name: string; length_m: number; fastest_mps: number }>();
  watering.pipes.forEach(({ line, pipe, length_m }, i) => {
    const key = `${line} ${pipe.size} ${pipe.inside_mm}`;
    const before = kinds.get(key);
    kinds.set(key, {
      line,
      name: text(pipeName(pipe), units),
      length_m: (before?.length_m ?? 0) + length_m,
      fastest_mps: Math.max(before?.fastest_mps ?? 0, fastest[i] ?? 0),
    });
  });
  const all = [...kinds.values()].sort((a, b) => a.line - b.line);
  return table([
    { head: "pipe of", cells: all.map(({ line }) => (line === 0 ? "main line" : `set ${line}`)) },
    { head: "size", cells: all.map(({ name }) => name) },
    { head: "length", cells: all.map(({ length_m }) => formatQuantity("length", length_m, units, 1)), isNumber: true },
    {
      head: "fastest",
      cells: all.map(({ fastest_mps }) => formatQuantity("speed", fastest_mps, units, 2)),
      isNumber: true,
    },
  ]);
}

/** Of the set that has least to spare. */
function heads(plan: Plan, units: UnitSystem): string {
  const watered = plan.watering;
  const watering = watered?.watering ?? null;
  const [set] = [...(watering?.sets ?? [])].sort((a, b) => a.spare_m - b.spare_m);
  if (watered === null || watering === null || set === undefined) return "";
  const head = totalHead(watered.job, watering, set);
  if (head === null) return "";
  const pressure = (head_m: number) => formatQuantity("pressure", pressureOf_kpa(head_m), units);
  const row = plan.rows?.rows[watered.job.laterals.row[head.lateral] ?? -1]?.id ?? "";
  const climb =
    Math.abs(head.rise_m) < 0.005
      ? "no climb"
      : `${formatQuantity("length", Math.abs(head.rise_m), units)} ${head.rise_m > 0 ? "up" : "down"} to the tee of row ${row} ${
          head.rise_m > 0 ? "take" : "give"
        } ${pressure(Math.abs(head.rise_m))}`;
  return wrapped(
    `Where the head goes, set ${set.name}: ${pressure(head.gauge_m)} at the gauge, ${pressure(head.headWorks_m)} lost in the head works with the ` +
      `filter due for cleaning, ${pressure(head.pipes_m)} in the pipes, ${climb}; ${pressure(head.tee_m)} are left there, and row ${row} needs ` +
      `${pressure(head.needed_m)}.`,
    "",
  );
}

const patternNames = {
  "cock-a-row": "a cock on each row",
  "valve-a-set": "a valve and submain for each set",
  "valves-at-source": "valves at the source, a pipe for each set",
} as const;

function patterns({ watering: watered, project }: Plan, units: UnitSystem): string {
  const found = watered?.watering?.patterns ?? [];
  if (watered === null || found.length === 0) return "";
  const currency = project.materials.currency === null ? "" : ` ${project.materials.currency}`;
  return table([
    {
      head: "pattern of valves",
      cells: found.map(
        ({ pattern }) => `${patternNames[pattern]}${pattern === watered.job.sets.pattern ? " (chosen)" : ""}`,
      ),
    },
    { head: "valves", cells: found.map(({ valves }) => String(valves)), isNumber: true },
    { head: "pipe", cells: found.map(({ pipe_m }) => formatQuantity("length", pipe_m, units, 0)), isNumber: true },
    {
      head: "price",
      cells: found.map(({ price }) => (price === null ? "not priced" : `${price.toFixed(2)}${currency}`)),
      isNumber: true,
    },
    { head: "water", cells: found.map(({ isShort }) => (isShort ? "too little" : "enough")) },
  ]);
}
