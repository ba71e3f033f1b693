import { drip } from "./drip/drip.ts";
import type { PipeLine, WaterPart } from "./drip/watering.ts";
import type { Watered, WateringStage } from "./drip/watering-stage.ts";
import { hasError } from "./finding.ts";
import type { Elevation } from "./ground/elevation.ts";
import type { BlockGround, Ground } from "./ground/ground.ts";
import { layGround } from "./ground/lay-ground.ts";
import { type PlantingAreaOf, withPlantingArea } from "./ground/planting-area.ts";
import { holdTheSame } from "./identity.ts";
import type { MainWorks } from "./main-works.ts";
import { unroutedMainline } from "./mainline/water-end.ts";
import type { CutOf, MaterialsOf } from "./materials/materials.ts";
import type { Outcome } from "./outcome.ts";
import type { Plan } from "./plan.ts";
import type { Overlay, PlantingParts } from "./plane/overlay.ts";
import type { GivenRow, KeptPlace, Project, RowSettings } from "./project/project.ts";
import { remembered, rememberedByKey } from "./remembered.ts";
import { blockBearing } from "./rows/bearing.ts";
import { bearingSweep, type SweepWork } from "./rows/bearing-sweep.ts";
import { blockRows, givenRowsOf, type NumberedRows } from "./rows/block-rows.ts";
import { layRows } from "./rows/lay-rows.ts";
import type { Rows, Sweep } from "./rows/rows.ts";
import { trellis } from "./trellis/lay-trellis.ts";

export interface Planner {
  /**
   * Everything that follows from the project. A project whose reading found an error gives a plan of findings only. What takes long is
   * worked out in the given ways, else in those the planner was made with.
   */
  plan(project: Project, ways?: Partial<Ways>): Plan;
  /** Every bearing of [0, 180) at a step in degrees, for one block; empty when the ground could not be laid out. */
  sweep(project: Project, block: string, step_deg: number): Sweep;
  /** The same a bearing at a time, for who must not be kept waiting; null when the ground could not be laid out. */
  sweepWork(project: Project, block: string, step_deg: number): SweepWork | null;
  /** The bearing the block is planned with, true degrees; null when there is no such block or no ground. */
  bearing(project: Project, block: string): number | null;
}

/** Ways to work out what takes long or is loaded late; each may have no answer yet, and the plan is then without. */
export interface Ways {
  /** Asked once for the same ground; all else is the same without. */
  readonly plantingAreaOf: PlantingAreaOf;
  /** What it answers null to is counted by length. */
  readonly cutOf: CutOf;
  /** null: no route and no trench; rows meet the water at their nearer end. */
  readonly mainWorks: MainWorks | null;
  /** null: nothing is known of what the water does. */
  readonly wateringStage: WateringStage | null;
  /** null: no shopping list. */
  readonly materialsOf: MaterialsOf | null;
}

/** Step of the sweep that chooses a bearing when "best" is asked for. */
const choosingStep_deg = 1;

/**
 * A planner that keeps each stage's last result and reuses it while its inputs are the same objects; edits keep what they do not touch.
 * A plan from a warm planner equals that of a new one. It brings no ways to work out what takes long: for a page that gets them later.
 */
export function createLeanPlanner(usual: Partial<Ways> = {}): Planner {
  const groundOf = remembered(layGroundOf, groundDependsOn);
  const sweepOf = rememberedByKey(bearingSweep, (ground, block, settings, step_deg) => [
    ground,
    block,
    withoutBearing(settings),
    step_deg,
  ]);
  const bearingOf = rememberedByKey((ground: Ground, block: BlockGround, settings: RowSettings) =>
    blockBearing(ground, block, settings, () => {
      return sweepOf(`choose ${block.block}`, ground, block, settings, choosingStep_deg).finish().best;
    }),
  );
  const rowsOfBlock = rememberedByKey(blockRowsOf);
  const rowsOf = remembered(gatheredRows);
  const mainlineOf = remembered(mainlineBy, mainlineDependsOn);
  const trellisOf = remembered(trellis);
  const dripOf = remembered(drip);
  const wateringOf = remembered(wateringBy, wateringDependsOn);
  const pipesOf = keptWhileSame<readonly PipeLine[]>([]);
  const trenchOf = remembered(trenchBy, trenchDependsOn);
  const listOf = remembered(materialsBy);

  const ground = (project: Project): Outcome<Ground> | null =>
    hasError(project.findings) || project.parcels.length === 0 ? null : groundOf(project);

  const plantedOf = remembered(withPlantingArea);
  let known: { readonly parts: PlantingParts; readonly area: Overlay } | null = null;
  const planted = (laid: Ground, plantingAreaOf: PlantingAreaOf) => {
    const parts = laid.plantingParts;
    if (known?.parts !== parts) {
      const area = plantingAreaOf(parts);
      known = area === null ? null : { parts, area };
    }
    return plantedOf(laid, known?.area ?? null);
  };

  const plan = (project: Project, ways: Partial<Ways> = {}): Plan => {
    const { plantingAreaOf, cutOf, mainWorks, wateringStage, materialsOf } = { ...noWays, ...usual, ...ways };
    const laid = ground(project);
    const findings = [...project.findings, ...(laid?.findings ?? [])];
    if (laid === null || !laid.ok) {
      return {
        project,
        ground: null,
        rows: null,
        mainline: null,
        trellis: null,
        drip: null,
        watering: null,
        trench: null,
        materials: null,
        findings,
      };
    }
    const withArea = planted(laid.value, plantingAreaOf);
    findings.push(...withArea.findings);
    const numbered = laid.value.blocks.flatMap((block, i) => {
      const settings = project.blocks[i]?.rows;
      if (settings === undefined) return [];
      const bearing = bearingOf(block.block, laid.value, block, settings);
      findings.push(...bearing.findings);
      const result = rowsOfBlock(
        block.block,
        laid.value,
        block,
        settings,
        bearing.bearing_deg,
        project.givenRows,
        project.keptPlaces,
      );
      findings.push(...result.findings);
      return [result];
    });
    const { rows, findings: rowFindings } = rowsOf(project.blocks, laid.value.elevation, project.ground, ...numbered);
    findings.push(...rowFindings);
    const main = mainlineOf(mainWorks, rows, laid.value, project);
    findings.push(...main.findings);
    const structure = trellisOf(rows, laid.value.elevation, project.blocks);
    findings.push(...structure.findings);
    const water = dripOf(rows, main.value, project.blocks);
    const watered = structure.ok
      ? wateringOf(wateringStage, rows, main.value, laid.value, structure.value, project)
      : null;
    findings.push(...(watered?.findings ?? []));
    const pipes = pipesOf(watered?.ok ? (watered.value.watering?.pipes ?? []) : []);
    const dug = structure.ok
      ? trenchOf(mainWorks, main.value, rows, laid.value, structure.value, pipes, project)
      : null;
    findings.push(...(dug?.findings ?? []));
    const list = structure.ok
      ? listOf(
          materialsOf,
          rows,
          structure.value,
          water,
          project.blocks,
          project.materials,
          cutOf,
          dug?.ok ? dug.value : null,
          watered?.ok ? (watered.value.watering?.parts ?? noParts) : noParts,
        )
      : null;
    findings.push(...(list?.findings ?? []));
    return {
      project,
      ground: withArea.ground,
      rows,
      mainline: main.value,
      trellis: structure.ok ? structure.value : null,
      drip: water,
      watering: watered?.ok ? watered.value : null,
      trench: dug?.ok ? dug.value : null,
      materials: list?.ok ? list.value : null,
      findings,
    };
  };

  const found = (project: Project, block: string) => {
    const laid = ground(project);
    const settings = project.blocks.find((one) => one.id === block)?.rows;
    if (laid === null || !laid.ok || settings === undefined) return null;
    const blockGround = laid.value.blocks.find((one) => one.block === block);
    return blockGround === undefined ? null : { ground: laid.value, blockGround, settings };
  };

  const sweepWork = (project: Project, block: string, step_deg: number): SweepWork | null => {
    const at = found(project, block);
    return at === null ? null : sweepOf(block, at.ground, at.blockGround, at.settings, step_deg);
  };

  return {
    plan,
    sweep: (project, block, step_deg) =>
      sweepWork(project, block, step_deg)?.finish() ?? { block, points: [], best: null },
    sweepWork,
    bearing: (project, block) => {
      const at = found(project, block);
      return at === null ? null : bearingOf(block, at.ground, at.blockGround, at.settings).bearing_deg;
    },
  };
}

function layGroundOf(project: Project): Outcome<Ground> {
  return layGround({
    ...project,
    settings: project.ground,
    blocks: project.blocks.map(({ id, rows }) => ({ id, rowSpacing_m: rows.rowSpacing_m })),
  });
}

function groundDependsOn(project: Project): readonly unknown[] {
  const { frameOrigin, parcels, edges, keepOuts, crossAlleys, blockAreas, spotHeights, heightGrids } = project;
  const spacings = project.blocks.flatMap(({ id, rows }) => [id, rows.rowSpacing_m]);
  const heights = [spotHeights, heightGrids];
  return [frameOrigin, parcels, edges, keepOuts, crossAlleys, blockAreas, ...heights, project.ground, ...spacings];
}

/** The settings as text without the bearing, which a sweep does not depend on: turning the rows keeps it. */
function withoutBearing(settings: RowSettings): string {
  return JSON.stringify({ ...settings, bearing: null });
}

const noParts: readonly WaterPart[] = [];

const noWays: Ways = {
  plantingAreaOf: () => null,
  cutOf: () => null,
  mainWorks: null,
  wateringStage: null,
  materialsOf: null,
};

function mainlineBy(works: MainWorks | null, rows: Rows, ground: Ground, project: Project) {
  const laid = works?.mainline(rows, ground, project);
  return laid?.ok
    ? { value: laid.value, findings: laid.findings }
    : { value: unroutedMainline(rows, ground, project), findings: laid?.findings ?? [] };
}

function mainlineDependsOn(works: MainWorks | null, rows: Rows, ground: Ground, project: Project): readonly unknown[] {
  const { blocks, sources, mainLines, keepOuts, mainLine } = project;
  return [works, rows, ground, blocks, sources, mainLines, keepOuts, mainLine];
}

function materialsBy(stage: MaterialsOf | null, ...inputs: Parameters<MaterialsOf>): ReturnType<MaterialsOf> | null {
  return stage?.(...inputs) ?? null;
}

function wateringBy(stage: WateringStage | null, ...inputs: Parameters<WateringStage>): Outcome<Watered> | null {
  return stage?.(...inputs) ?? null;
}

function wateringDependsOn(stage: WateringStage | null, ...inputs: Parameters<WateringStage>): readonly unknown[] {
  const [rows, main, ground, trellis, project] = inputs;
  const { blocks, sources, mainLine, trench, water, sets, season, materials } = project;
  return [stage, rows, main, ground, trellis, blocks, sources, mainLine, trench, water, sets, season, materials];
}

/** Gives the earlier object back as long as a new one holds the same, so that what depends on it is not worked out anew. */
function keptWhileSame<T>(first: T): (value: T) => T {
  let kept = first;
  return (value) => {
    if (!holdTheSame(kept, value)) kept = value;
    return kept;
  };
}

function trenchBy(
  works: MainWorks | null,
  ...inputs: Parameters<MainWorks["trench"]>
): ReturnType<MainWorks["trench"]> {
  return works?.trench(...inputs) ?? null;
}

function trenchDependsOn(works: MainWorks | null, ...inputs: Parameters<MainWorks["trench"]>): readonly unknown[] {
  const [main, rows, ground, trellis, pipes, { blocks, trench, mainLine }] = inputs;
  return [works, main, rows, ground, trellis, pipes, blocks, trench, mainLine];
}

function blockRowsOf(
  ground: Ground,
  block: BlockGround,
  settings: RowSettings,
  bearing_deg: number,
  given: readonly GivenRow[],
  kept: readonly KeptPlace[],
): NumberedRows {
  const standing = givenRowsOf(block, ground.blocks, given, ground.frame);
  return blockRows(ground, block, settings, bearing_deg, standing, kept);
}

function gatheredRows(
  blocks: Project["blocks"],
  elevation: Elevation,
  limits: Project["ground"],
  ...numbered: readonly NumberedRows[]
) {
  return layRows(blocks, numbered, elevation, limits);
}
