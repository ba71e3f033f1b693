import { AnalysisStatistic, InitHydOption, NodeProperty, Project, Workspace } from "epanet-js";
import { lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import type { Network, SupplyCurve } from "../../src/core/hydraulics/network.ts";
import type { EmitterLaw } from "../../src/core/hydraulics/outlet.ts";

/** EPANET's water, 1.1e-5 ft2/s. */
export const epanetViscosity_m2ps = 1.1e-5 * 0.3048 ** 2;

/** The law of friction that is the same in EPANET. */
export type SharedLaw = "hazen-williams" | "epanet";

export interface Epanet {
  /**
   * Heads and outflows of a network whose pipes are all of one law and whose emitters all have one exponent, or all compensate with flow that does
   * not grow any more; and how long it took. Strict: until heads and flows
   * hold still as well, which takes it longer. Warnings of not having got there show in `relativeError`.
   */
  readonly solve: (network: Network, supply: SupplyCurve, isStrict?: boolean) => EpanetAnswer;
}

export interface EpanetAnswer {
  readonly head_m: Float64Array;
  readonly outflow_lps: Float64Array;
  /** Sum of changes of flow in the last trial over sum of flows. */
  readonly relativeError: number;
  readonly trials: number;
  readonly write_ms: number;
  readonly open_ms: number;
  readonly solve_ms: number;
  readonly all_ms: number;
}

/** It stops below this, and cannot be told less. */
export const epanetAccuracy = 1e-5;

/** It gives up after so many. */
export const epanetTrials = 500;

/** EPANET (OWA 2.3.5) as a judge. */
export async function createEpanet(): Promise<Epanet> {
  const workspace = new Workspace();
  await workspace.loadModule();
  return { solve: (network, supply, isStrict = false) => quietly(() => solved(workspace, network, supply, isStrict)) };
}

function solved(workspace: Workspace, network: Network, supply: SupplyCurve, isStrict: boolean): EpanetAnswer {
  const begun = performance.now();
  const text = inputText(network, supply, isStrict);
  workspace.writeFile("a.inp", text);
  const written = performance.now();
  const project = new Project(workspace);
  try {
    project.open("a.inp", "a.rpt", "a.out");
  } catch (error) {
    project.close();
    throw new Error(`${error}\n${workspace.readFile("a.rpt")}`);
  }
  const opened = performance.now();
  project.openH();
  project.initH(InitHydOption.NoSave);
  project.runH();
  const run = performance.now();
  const heads = project.getNodeValues(NodeProperty.Head);
  const demands = project.getNodeValues(NodeProperty.Demand);
  const read = performance.now();
  const relativeError = project.getStatistic(AnalysisStatistic.RelativeError);
  const trials = project.getStatistic(AnalysisStatistic.Iterations);
  project.closeH();
  project.close();
  // Junctions come in the order of the file and reservoirs last: a source of one head is a reservoir itself.
  const count = network.upstream.length;
  const place = (i: number) => (isPumped(supply) ? i : i === 0 ? heads.length - 1 : i - 1);
  return {
    head_m: Float64Array.from({ length: count }, (_, i) => heads[place(i)] ?? Number.NaN),
    outflow_lps: Float64Array.from({ length: count }, (_, i) =>
      i === 0 && !isPumped(supply) ? 0 : (demands[place(i)] ?? Number.NaN) / 3.6,
    ),
    relativeError,
    trials,
    write_ms: written - begun,
    open_ms: opened - written,
    solve_ms: run - opened,
    all_ms: read - begun,
  };
}

const isPumped = ({ flow_lps }: SupplyCurve) => flow_lps.length > 1;

/** The network in EPANET's own input format: m, mm, m3/h. */
function inputText(network: Network, supply: SupplyCurve, isStrict: boolean): string {
  const { upstream, length_m, inside_mm, roughness, minor, height_m, regulator_m, outlet, outlets } = network;
  const nodes = [...upstream.keys()];
  const emitters = outlets.filter((each): each is EmitterLaw => each.kind === "emitter");
  if (emitters.length !== outlets.length) throw new Error("EPANET knows no condensed laterals");
  const [first] = emitters;
  const isCompensating = first !== undefined && first.from_m !== null;
  const at = (i: number) => emitters[outlet[i] ?? -1];
  const junctions = nodes.flatMap((i) => {
    if (i === 0 && !isPumped(supply)) return [];
    const demand = isCompensating ? (at(i)?.nominal_lps ?? 0) * 3.6 : 0;
    return [`N${i} ${height_m[i]} ${demand}`];
  });
  const pipes: string[] = [];
  const valves: string[] = [];
  for (const i of nodes.slice(1)) {
    const most_m = regulator_m[i] ?? Number.NaN;
    let from = `N${upstream[i]}`;
    if (!Number.isNaN(most_m)) {
      junctions.push(`R${i} ${height_m[upstream[i] ?? 0]} 0`);
      valves.push(`V${i} ${from} R${i} 1000 PRV ${most_m} 0`);
      from = `R${i}`;
    }
    pipes.push(`P${i} ${from} N${i} ${length_m[i]} ${inside_mm[i]} ${roughness[i]} ${minor[i]} OPEN`);
  }
  const emitted = nodes.flatMap((i) => {
    const emitter = at(i);
    if (emitter === undefined || isCompensating) return [];
    return [`N${i} ${emitter.nominal_lps * 3.6 * emitter.nominalHead_m ** -emitter.exponent}`];
  });
  const isHazenWilliams = network.law[1] === lawCodes["hazen-williams"];
  const source = isPumped(supply)
    ? { reservoir: "S 0", pump: "U S N0 HEAD C", curve: curveLines(supply) }
    : { reservoir: `N0 ${supply.head_m[0]}`, pump: "", curve: [] };
  const options = [
    "UNITS CMH",
    `HEADLOSS ${isHazenWilliams ? "H-W" : "D-W"}`,
    `TRIALS ${epanetTrials}`,
    `ACCURACY ${epanetAccuracy}`,
    `EMITTER EXPONENT ${isCompensating ? 0.5 : (first?.exponent ?? 0.5)}`,
    "BACKFLOW ALLOWED NO",
    ...(isStrict ? ["HEADERROR 0.000001", "FLOWCHANGE 0.0000001"] : []),
    ...(isCompensating
      ? ["DEMAND MODEL PDA", "MINIMUM PRESSURE 0", `REQUIRED PRESSURE ${first.from_m}`, "PRESSURE EXPONENT 0.5"]
      : []),
  ];
  const section = (name: string, lines: readonly string[]) => `[${name}]\n${lines.join("\n")}\n`;
  return [
    section("TITLE", ["network"]),
    section("JUNCTIONS", junctions),
    section("RESERVOIRS", [source.reservoir]),
    section("PIPES", pipes),
    section("PUMPS", [source.pump]),
    section("VALVES", valves),
    section("EMITTERS", emitted),
    section("CURVES", source.curve),
    section("OPTIONS", options),
    section("TIMES", ["DURATION 0"]),
    section("END", []),
  ].join("\n");
}

/** EPANET lays a power through a curve of three points: a fourth, half-way, keeps it straight between them. */
function curveLines({ flow_lps, head_m }: SupplyCurve): readonly string[] {
  const points = [...flow_lps].map((flow, i) => [flow * 3.6, head_m[i] ?? 0] as const);
  const [a, b] = points;
  if (points.length === 3 && a !== undefined && b !== undefined) {
    points.splice(1, 0, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
  }
  return points.map(([flow, head]) => `C ${flow} ${head}`);
}

/** Its warnings are judged by `relativeError`. */
function quietly<T>(work: () => T): T {
  const said = console.warn;
  console.warn = () => {};
  try {
    return work();
  } finally {
    console.warn = said;
  }
}
