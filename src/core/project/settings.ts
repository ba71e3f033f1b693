import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { UnitSystem } from "../units.ts";
import { type Defaults, defaults } from "./defaults.ts";
import { defaultsNote } from "./defaults-note.ts";
import { badSetting, duplicateBlock } from "./findings.ts";
import { isJsonObject, member, shown } from "./json-value.ts";
import { migrate } from "./migrate.ts";
import type {
  Block,
  GroundSettings,
  Json,
  JsonObject,
  MainLineSettings,
  MaterialSettings,
  TrenchSettings,
} from "./project.ts";
import { readSection, type SectionReading } from "./read-section.ts";
import { groundSettings, plantings, rowSettings } from "./resolve.ts";
import { mainLineSettings } from "./resolve-main-line.ts";
import { materialSettings } from "./resolve-materials.ts";
import { trellisOver, trellisSettings } from "./resolve-trellis.ts";
import { trenchSettings } from "./resolve-trench.ts";
import { dripSettings, seasonSettings, setSettings, waterSettings } from "./resolve-water.ts";
import {
  blockSection,
  blockSections,
  frameSection,
  groundSection,
  mainLineSection,
  materialsSection,
  rootSection,
  rootSections,
  rowsSection,
  trellisSection,
  trenchSection,
} from "./schema.ts";
import type { Section, Stated } from "./schema-parts.ts";
import { dripSection, seasonSection, setsSection, waterSection } from "./water-schema.ts";
import type { SeasonSettings, SetSettings, WaterSettings } from "./water-settings.ts";

export interface SettingsReading {
  readonly name: string | null;
  readonly units: UnitSystem;
  readonly frameOrigin: LonLat | null;
  readonly ground: GroundSettings;
  readonly mainLine: MainLineSettings;
  readonly trench: TrenchSettings;
  readonly water: WaterSettings;
  readonly sets: SetSettings;
  readonly season: SeasonSettings;
  readonly blocks: readonly Block[];
  readonly materials: MaterialSettings;
  readonly findings: readonly Finding[];
}

interface BlockStated {
  readonly id: string;
  readonly name: string | undefined;
  readonly plantings: Stated<typeof blockSection>["plantings"];
  readonly rows: Stated<typeof rowsSection>;
  readonly trellis: Stated<typeof trellisSection>;
  readonly drip: Stated<typeof dripSection>;
}

/**
 * The settings of the member `tautrow`, with defaults for what it does not state: those of its unit system, metric unless it says "us".
 * A block's own settings stand above the project's. Findings: those of `readSection` and `migrate`, `project/duplicate-block`,
 * `project/defaults-used`.
 */
export function readSettings(value: Json | undefined): SettingsReading {
  const findings: Finding[] = [];
  const kept = <T>(reading: { readonly stated: T; readonly findings: readonly Finding[] }): T => {
    findings.push(...reading.findings);
    return reading.stated;
  };
  if (value !== undefined && value !== null && !isJsonObject(value)) {
    findings.push(badSetting("tautrow", shown(value), "the settings must be an object"));
  }
  const migrated = migrate(isJsonObject(value) ? value : {});
  findings.push(...migrated.findings);
  const { settings } = migrated;

  const root = kept(readSection(rootSection, settings, "", rootSections));
  const frame = kept(part(frameSection, settings, "frame"));
  const ground = kept(part(groundSection, settings, "ground"));
  const mainLine = kept(part(mainLineSection, settings, "mainLine"));
  const trench = kept(part(trenchSection, settings, "trench"));
  const water = kept(part(waterSection, settings, "water"));
  const sets = kept(part(setsSection, settings, "sets"));
  const season = kept(part(seasonSection, settings, "season"));
  const rows = kept(part(rowsSection, settings, "rows"));
  const trellis = kept(part(trellisSection, settings, "trellis"));
  const drip = kept(part(dripSection, settings, "drip"));
  const materials = kept(part(materialsSection, settings, "materials"));
  const own = kept(readBlocks(member(settings, "blocks")));

  const units = root.units ?? "metric";
  const fallback: Defaults = defaults[units];
  const supplies = materialSettings(materials, fallback.materials);
  const stated = own.map((block) => ({
    ...block,
    rows: { ...rows, ...block.rows },
    trellis: trellisOver(trellis, block.trellis),
    drip: { ...drip, ...block.drip },
  }));
  const blocks = stated.map((block): Block => {
    const lots = plantings(block.plantings ?? [], block.id, supplies.vineSpare_ratio);
    findings.push(...lots.findings);
    const settled = rowSettings(block.rows, fallback.rows, block.id);
    findings.push(...settled.findings);
    return {
      id: block.id,
      name: block.name ?? `Block ${block.id}`,
      rows: settled.rows,
      trellis: trellisSettings(block.trellis, fallback.trellis),
      drip: dripSettings(block.drip, fallback.drip),
      plantings: lots.plantings,
    };
  });
  const grounds = groundSettings(ground, fallback.ground);
  const line = mainLineSettings(mainLine, fallback.mainLine);
  findings.push(...line.findings);
  const dug = trenchSettings(trench, fallback.trench);
  findings.push(...dug.findings);
  const watered = setSettings(sets, fallback.sets, trench.pipe?.size !== undefined);
  findings.push(...watered.findings);
  const note = defaultsNote(
    { ground, mainLine, trench, water, materials, blocks: stated },
    {
      ground: grounds,
      mainLine: line.mainLine,
      trench: dug.trench,
      water: waterSettings(water, fallback.water),
      materials: supplies,
      blocks,
    },
  );
  if (note !== null) findings.push(note);
  return {
    name: root.name ?? null,
    units,
    frameOrigin: frame.origin ?? null,
    ground: grounds,
    mainLine: line.mainLine,
    trench: dug.trench,
    water: waterSettings(water, fallback.water),
    sets: watered.sets,
    season: seasonSettings(season, fallback.season),
    blocks,
    materials: supplies,
    findings,
  };
}

function part<T>(known: Section<T>, settings: JsonObject, name: string): SectionReading<T> {
  return readSection(known, member(settings, name), name, []);
}

/** The blocks as stated; one block "1" when the file names none. A block without an id is called by its place, from 1. */
function readBlocks(value: Json | undefined): {
  readonly stated: readonly BlockStated[];
  readonly findings: Finding[];
} {
  const findings: Finding[] = [];
  if (value !== undefined && value !== null && !Array.isArray(value)) {
    findings.push(badSetting("blocks", shown(value), "it must be a list"));
  }
  const listed: readonly Json[] = Array.isArray(value) && value.length > 0 ? value : [{}];
  const seen = new Set<string>();
  const stated = listed.flatMap((entry, i): BlockStated[] => {
    const block = isJsonObject(entry) ? entry : {};
    const id = blockId(entry, i);
    const path = `blocks.${id}`;
    if (!isJsonObject(entry)) findings.push(badSetting(path, shown(entry), "it must be an object"));
    const own = readSection(blockSection, block, path, blockSections);
    const rows = readSection(rowsSection, member(block, "rows"), `${path}.rows`, []);
    const trellis = readSection(trellisSection, member(block, "trellis"), `${path}.trellis`, []);
    const drip = readSection(dripSection, member(block, "drip"), `${path}.drip`, []);
    findings.push(...own.findings, ...rows.findings, ...trellis.findings, ...drip.findings);
    if (seen.has(id)) {
      findings.push(duplicateBlock(id));
      return [];
    }
    seen.add(id);
    const { name, plantings: lots } = own.stated;
    return [{ id, name, plantings: lots, rows: rows.stated, trellis: trellis.stated, drip: drip.stated }];
  });
  return { stated, findings };
}

/** The id of a block in the list of blocks: as stated, or its place from 1. */
export function blockId(entry: Json | undefined, i: number): string {
  const id = isJsonObject(entry) ? member(entry, "id") : undefined;
  return (typeof id === "string" && id !== "") || typeof id === "number" ? String(id) : String(i + 1);
}
