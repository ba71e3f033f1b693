import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { frameReach_m } from "../plane/frame.ts";
import { cutFindings } from "./cut-findings.ts";
import { entriesOf, statedSystem } from "./document.ts";
import { apart_m } from "./extent.ts";
import { type FeaturesReading, readFeatures } from "./features.ts";
import { frameTooFar, unknownBlock, type Where } from "./findings.ts";
import { isJsonObject } from "./json-value.ts";
import type { BlockArea, GivenRow, JsonObject, Project, ProjectDocument } from "./project.ts";
import { rememberedByObject } from "./remembered-by-object.ts";
import { readSettings, type SettingsReading } from "./settings.ts";
import { shared, sharedList } from "./share.ts";

/** Features are read once for as long as their list is the same object: changing a setting does not read them again. */
const featuresRead = new WeakMap<object, { readonly system: string | null; readonly reading: FeaturesReading }>();

/**
 * A project from its document. Parts that hold the same as those of an earlier project are the same objects, so that who keeps
 * results by object knows what to do anew. `before` are findings from before the document was there.
 */
export function deriveProject(document: ProjectDocument, earlier: Project | null, before: readonly Finding[]): Project {
  const system = statedSystem(document);
  const features = featuresOf(document, system?.name ?? null);
  const settings = settingsOf(document);
  const { ground, blocks } = settings;
  const places = placeBlocks(features, settings);
  const keepOuts = features.keepOuts.map((keepOut) => {
    const usual = keepOut.role === "obstacle" ? ground.obstacleDistance_m : ground.noPlantDistance_m;
    const ofTrench =
      keepOut.role === "obstacle" ? settings.mainLine.obstacleDistance_m : settings.mainLine.noPlantDistance_m;
    return {
      ...keepOut,
      distance_m: keepOut.distance_m ?? usual,
      trenchDistance_m: keepOut.trenchDistance_m ?? ofTrench,
    };
  });
  const crossAlleys = features.crossAlleys.map((alley) => ({
    ...alley,
    width_m: alley.width_m ?? ground.alleyWidth_m,
  }));
  const findings = [
    ...before,
    ...(system === null ? [] : [system.finding]),
    ...settings.findings,
    ...features.findings,
    ...places.findings,
    ...frameFault(settings.frameOrigin, features.middle),
  ];
  const project: Project = {
    document,
    findings: cutFindings(findings),
    name: settings.name ?? nameIn(document) ?? "Unnamed parcel",
    units: settings.units,
    frameOrigin: settings.frameOrigin,
    parcels: features.parcels,
    edges: features.edges,
    keepOuts,
    crossAlleys,
    blockAreas: places.blockAreas,
    givenRows: places.givenRows,
    keptPlaces: features.keptPlaces,
    sources: features.sources,
    marks: features.marks,
    mainLines: features.mainLines,
    spotHeights: features.spotHeights,
    heightGrids: features.heightGrids,
    ground,
    mainLine: settings.mainLine,
    trench: settings.trench,
    water: settings.water,
    sets: settings.sets,
    season: settings.season,
    blocks,
    materials: settings.materials,
  };
  return earlier === null ? project : sharing(earlier, project);
}

function sharing(earlier: Project, project: Project): Project {
  return {
    ...project,
    frameOrigin: shared(earlier.frameOrigin, project.frameOrigin),
    parcels: sharedList(earlier.parcels, project.parcels),
    edges: sharedList(earlier.edges, project.edges),
    keepOuts: sharedList(earlier.keepOuts, project.keepOuts),
    crossAlleys: sharedList(earlier.crossAlleys, project.crossAlleys),
    blockAreas: sharedList(earlier.blockAreas, project.blockAreas),
    givenRows: sharedList(earlier.givenRows, project.givenRows),
    keptPlaces: sharedList(earlier.keptPlaces, project.keptPlaces),
    sources: sharedList(earlier.sources, project.sources),
    marks: sharedList(earlier.marks, project.marks),
    mainLines: sharedList(earlier.mainLines, project.mainLines),
    spotHeights: sharedList(earlier.spotHeights, project.spotHeights),
    heightGrids: sharedList(earlier.heightGrids, project.heightGrids),
    ground: shared(earlier.ground, project.ground),
    mainLine: shared(earlier.mainLine, project.mainLine),
    trench: shared(earlier.trench, project.trench),
    water: shared(earlier.water, project.water),
    sets: shared(earlier.sets, project.sets),
    season: shared(earlier.season, project.season),
    blocks: sharedList(earlier.blocks, project.blocks),
    materials: shared(earlier.materials, project.materials),
  };
}

/** Settings are read once for as long as they are the same object: dragging a corner does not read them again. */
const settingsRead = rememberedByObject((settings: JsonObject) => readSettings(settings));

function settingsOf({ tautrow }: ProjectDocument): SettingsReading {
  return isJsonObject(tautrow) ? settingsRead(tautrow) : readSettings(tautrow);
}

function featuresOf(document: ProjectDocument, system: string | null): FeaturesReading {
  const known = featuresRead.get(document.features);
  if (known !== undefined && known.system === system) return known.reading;
  const reading = readFeatures(entriesOf(document), system);
  featuresRead.set(document.features, { system, reading });
  return reading;
}

function nameIn({ name }: ProjectDocument): string | null {
  return typeof name === "string" && name.trim() !== "" ? name : null;
}

/** Block areas and given rows whose block is in the settings; an area that names none belongs to the block when there is only one. */
function placeBlocks(
  features: FeaturesReading,
  { blocks }: SettingsReading,
): {
  readonly blockAreas: readonly BlockArea[];
  readonly givenRows: readonly GivenRow[];
  readonly findings: readonly Finding[];
} {
  const findings: Finding[] = [];
  const only = blocks.length === 1 ? blocks[0]?.id : undefined;
  const isKnown = (id: string): boolean => blocks.some((block) => block.id === id);
  const at = (place: LonLat | undefined, feature: string): Where => ({ feature, at: place ?? null });
  const blockAreas = features.blockAreas.flatMap((area): BlockArea[] => {
    const block = area.block ?? only;
    if (block !== undefined && isKnown(block)) return [{ ...area, block }];
    findings.push(unknownBlock(at(area.polygons[0]?.[0]?.[0], area.key), area.block));
    return [];
  });
  const givenRows = features.givenRows.filter(({ key, block, ends }) => {
    if (block === null || isKnown(block)) return true;
    findings.push(unknownBlock(at(ends?.[0], key), block));
    return false;
  });
  return { blockAreas, givenRows, findings };
}

function frameFault(origin: LonLat | null, middle: LonLat | null): readonly Finding[] {
  if (origin === null || middle === null) return [];
  const distance_m = apart_m(origin, middle);
  return distance_m > frameReach_m ? [frameTooFar(origin, distance_m, frameReach_m)] : [];
}
