import type { Import } from "./imports.ts";

/** The picture of DEVELOPERS.md: a stage imports only stages to its left and the ground floor. */
const stages = ["project", "ground", "rows", "mainline", "trellis", "drip", "trench", "materials", "work"];
/** Beside the planner: edits of the project on the map. Knows the project and its ground; no stage knows it. */
const beside: Readonly<Record<string, readonly string[]>> = { drawing: ["project", "ground"] };
/** What hands a finished plan over; neither knows the other. */
const handover = ["exchange", "sheets"];
const floor = ["plane", "systems", "graph", "hydraulics", "units", "finding", "account", "outcome", "identity"];
/** Above the stages: they know all of them, and none of them knows these. */
const roof = [
  "plan",
  "planner",
  "lean-planner",
  "main-works",
  "remembered",
  "validate-plan",
  "nothing-lost",
  "variants",
  "what-if",
  "what-ifs",
  "water-what-ifs",
  "index",
];

/** Packages the core may use, and the part of it that may. */
const corePackages: Readonly<Record<string, readonly string[]>> = {
  proj4: ["src/core/plane/", "src/core/systems/"],
  fflate: ["src/core/exchange/"],
  "clipper2-ts": ["src/core/plane/"],
  flatbush: ["src/core/plane/", "src/core/ground/", "src/core/rows/", "src/core/mainline/"],
  flatqueue: ["src/core/graph/"],
  geomagnetism: ["src/core/plane/"],
  delaunator: ["src/core/ground/"],
  zod: ["src/core/project/", "src/core/exchange/"],
  "geojson-validation": ["src/core/project/"],
  geojson: ["src/core/"],
};
/** Packages that only the readers of other formats use: they are loaded when such a file is opened. */
const readerPackages = ["geotiff", "@tmcw/togeojson", "@xmldom/xmldom", "sql.js"];
/** Everywhere else places are turned into metres by a frame, or by a coordinate system of the systems. */
const projectionHomes = ["src/core/plane/", "src/core/systems/"];
/** The index of the core, the plugin and the app, and the one module that stands before a folder of its own. */
const frontDoors = /\/index\.ts$|^src\/core\/units\.ts$/;
const turfHomes = ["src/core/plane/validity.ts", "src/core/plane/overlay.ts"];
/** They measure on a sphere. */
const turfMeasures =
  /^(length|distance|area|bearing|destination|along|buffer|rhumb.*|.*[dD]istance|.*[lL]ength|convert.*|great-?circle)$/i;
const mayImport: Readonly<Record<string, readonly string[]>> = {
  core: ["core"],
  cli: ["cli", "readers", "core"],
  plugin: ["plugin", "core"],
  app: ["app", "plugin", "readers", "core"],
  readers: ["readers", "core"],
};

/** A sentence for every import that breaks a rule of the house. */
export function brokenRules(imports: readonly Import[]): readonly string[] {
  return [...imports.flatMap(broken), ...circles(imports)];
}

function broken(each: Import): readonly string[] {
  const said = (rule: string) => `${each.file} imports ${each.target}: ${rule}`;
  const isOurs = each.target.startsWith("src/");
  return [
    ...(isOurs ? ours(each) : packages(each)).map(said),
    ...(each.isReExport && !frontDoors.test(each.file) ? [said("only an index.ts re-exports")] : []),
    ...(/(^|\/)(utils?|helpers?|common)(\/|\.|$)/.test(each.file) ? [said("no folder of leftovers")] : []),
  ];
}

function ours(each: Import): readonly string[] {
  const door = each.file.split("/")[1] ?? "";
  const other = each.target.split("/")[1] ?? "";
  if (!(mayImport[door] ?? []).includes(other)) return [`${door} may not import ${other}`];
  return door === "core" ? storeys(part(each.file), part(each.target)) : [];
}

/** "rows" for src/core/rows/row-pieces.ts, "units" for src/core/units.ts. */
function part(path: string): string {
  return (path.split("/")[2] ?? "").replace(/\.ts$/, "");
}

function storeys(from: string, to: string): readonly string[] {
  if (from === to) return [];
  const known = [...stages, ...Object.keys(beside), ...handover, ...floor, ...roof];
  const stranger = [from, to].find((name) => !known.includes(name));
  if (stranger !== undefined) return [`${stranger} has no place in the picture`];
  if (floor.includes(from)) return floor.includes(to) ? [] : ["the ground floor knows nothing above it"];
  const lookedAt = beside[from];
  if (lookedAt !== undefined) {
    return floor.includes(to) || lookedAt.includes(to)
      ? []
      : [`${from} knows ${lookedAt.join(", ")} and the ground floor`];
  }
  if (handover.includes(from)) {
    const isRight = floor.includes(to) || stages.includes(to) || to === "plan" || to === "variants";
    return isRight ? [] : ["what hands over knows the plan, two plans compared, the stages and the ground floor only"];
  }
  if (roof.includes(from)) return from !== "index" && to === "index" ? ["only doors go through the index"] : [];
  if (floor.includes(to)) return [];
  if (stages.includes(to)) return stages.indexOf(to) < stages.indexOf(from) ? [] : ["a stage looks to its left only"];
  return ["a stage knows stages to its left and the ground floor only"];
}

function packages(each: Import): readonly string[] {
  const found: string[] = [];
  const { file, target } = each;
  const inCore = file.startsWith("src/core/");
  if (/^@turf\//.test(target)) {
    if (!turfHomes.includes(file)) found.push(`Turf is used in ${turfHomes.join(" and ")} only`);
    const taken = [...each.names, target.replace("@turf/", "")];
    if (taken.some((name) => turfMeasures.test(name))) found.push("Turf measures on a sphere, the plane does not");
    if (target === "@turf/turf" && each.names.includes("*")) found.push("name what is taken from Turf");
  } else if (inCore) {
    const name = Object.keys(corePackages).find((known) => target === known || target.startsWith(`${known}/`));
    const homes = name === undefined ? undefined : corePackages[name];
    if (homes === undefined) found.push("not a package of the core");
    else if (!homes.some((home) => file.startsWith(home))) found.push(`belongs in ${homes.join(", ")}`);
  }
  const isReader = file.startsWith("src/readers/");
  const isOfReaders = readerPackages.some((name) => target === name || target.startsWith(`${name}/`));
  if (isOfReaders && !isReader) found.push("belongs in src/readers/");
  if (target === "proj4" && !inCore && !projectionHomes.some((home) => file.startsWith(home)))
    found.push(`belongs in ${projectionHomes.join(", ")}`);
  if (target.startsWith("node:") && !file.startsWith("src/cli/"))
    found.push("only the command line touches the machine");
  if (file.startsWith("src/plugin/") && target === "maplibre-gl" && !each.isType)
    found.push("the plugin takes maplibre-gl as types; the page brings the map");
  return found;
}

/** Circles among our own files, each said once, from its first file in the alphabet. */
function circles(imports: readonly Import[]): readonly string[] {
  const next = new Map<string, string[]>();
  for (const { file, target } of imports) {
    if (target.startsWith("src/")) next.set(file, [...(next.get(file) ?? []), target]);
  }
  const found = new Set<string>();
  const done = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const seen = path.indexOf(file);
    if (seen >= 0) {
      const ring = path.slice(seen);
      const first = ring.indexOf([...ring].sort()[0] ?? file);
      found.add(`${[...ring.slice(first), ...ring.slice(0, first), ring[first]].join(" → ")}: no circles`);
      return;
    }
    if (done.has(file)) return;
    for (const target of next.get(file) ?? []) walk(target, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) walk(file, []);
  return [...found];
}
