import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { WateringStage } from "../core/drip/watering-stage.ts";
import type { Finding } from "../core/finding.ts";
import { createLeanPlanner, type Planner } from "../core/lean-planner.ts";
import type { MainWorks } from "../core/main-works.ts";
import type { MaterialsOf } from "../core/materials/materials.ts";
import type { Plan } from "../core/plan.ts";
import type { Block, Project } from "../core/project/project.ts";
import type { Sweep } from "../core/rows/rows.ts";
import type { UnitSystem } from "../core/units.ts";
import { type Cuttings, createCuttings } from "./cutting/cuttings.ts";
import { createDrawingState, type DrawingState } from "./drawing/drawing-state.ts";
import { current, type History } from "./history.ts";
import { createKeepingState, type KeepingState } from "./keeping/keeping-state.ts";
import { createPlantingAreas, type PlantingAreas } from "./planting/planting-areas.ts";
import { createShownPlan } from "./shown-plan.ts";

/** Why a file was not opened: its name, and what reading it had to say. */
export interface Refusal {
  readonly file: string;
  readonly findings: readonly Finding[];
}

/** A place on the trench: how far along which of its branches. */
export interface TrenchPlace {
  /** Index into the trench's branches. */
  readonly branch: number;
  /** Horizontal, from the branch's upstream end. */
  readonly station_m: number;
}

/** How far the route of the main line is: as shown, being laid anew, or waiting until what moves the rows is let go. */
export type RouteState = "laid" | "asked" | "waiting";

/** What the page knows: signals only, no DOM. Everything that follows from the project is the core's plan. */
export interface Store {
  readonly planner: Planner;
  /** The planting areas that are known; until one is, its plan is shown without. */
  readonly planting: PlantingAreas;
  /** The cutting plans that are known; until one is, its coils are counted by length. */
  readonly cuttings: Cuttings;
  /** What the shopping list and what the water does are worked out by, once that is loaded. */
  readonly materialsOf: Signal<MaterialsOf | null>;
  readonly wateringStageOf: Signal<(project: Project) => WateringStage | null>;
  /** The stages of the main line for a project that is shown, once they are loaded; null where the plan is to be without. */
  readonly mainWorksOf: Signal<(project: Project) => MainWorks | null>;
  readonly routeState: Signal<RouteState>;
  /** True while a watering is being worked out anew: what is shown of it is as it was. */
  readonly isWateringAsked: Signal<boolean>;
  /** True while the map draws the laterals by the flow of their emitters. */
  readonly showsFlow: Signal<boolean>;
  /** The place on the trench that is pointed at, on the map or in the side view. */
  readonly trenchPlace: Signal<TrenchPlace | null>;
  /** Every step since the project was opened; null while none is. */
  readonly history: Signal<History | null>;
  /** What an edit would give while something is held: shown in place of the last step. */
  readonly draft: Signal<Project | null>;
  /** What is shown: the draft, else the last step. */
  readonly project: ReadonlySignal<Project | null>;
  readonly plan: ReadonlySignal<Plan | null>;
  /** True while something is held. */
  readonly drafting: ReadonlySignal<boolean>;
  /** The plan for lists and totals, which follow a drag at their own pace. */
  readonly shownPlan: ReadonlySignal<Plan | null>;
  /** Units that are shown; a file brings its own, the switch changes what is shown, not the file. */
  readonly units: Signal<UnitSystem>;
  /** Id of the block whose fields, handle and chart are shown. */
  readonly blockId: Signal<string | null>;
  readonly block: ReadonlySignal<Block | null>;
  /** Id of the selected row. */
  readonly row: Signal<string | null>;
  /** The finding whose place is shown on the map. */
  readonly finding: Signal<Finding | null>;
  readonly sweep: Signal<Sweep | null>;
  readonly refusal: Signal<Refusal | null>;
  /** Counts up with every opened project: the map moves to it. */
  readonly opened: Signal<number>;
  /** Counts up to have the map show the whole plan of the same project. */
  readonly wholeAsked: Signal<number>;
  readonly drawing: DrawingState;
  readonly keeping: KeepingState;
  /** Counts up to have the map drawn again though nothing changed; for measuring. */
  readonly repaint: Signal<number>;
}

/** A store with nothing open. */
export function createStore(planner: Planner = createLeanPlanner()): Store {
  const planting = createPlantingAreas();
  const cuttings = createCuttings();
  const mainWorksOf = signal((_: Project): MainWorks | null => null);
  const materialsOf = signal<MaterialsOf | null>(null);
  const wateringStageOf = signal((_: Project): WateringStage | null => null);
  const history = signal<History | null>(null);
  const draft = signal<Project | null>(null);
  const project = computed(() => draft.value ?? (history.value && current(history.value).project));
  const blockId = signal<string | null>(null);
  const drafting = computed(() => draft.value !== null);
  const plan = computed(() =>
    project.value
      ? planner.plan(project.value, {
          plantingAreaOf: planting.of,
          cutOf: cuttings.of.value,
          mainWorks: mainWorksOf.value(project.value),
          wateringStage: wateringStageOf.value(project.value),
          materialsOf: materialsOf.value,
        })
      : null,
  );
  const shownPlan = createShownPlan(plan, drafting);
  return {
    planner,
    planting,
    cuttings,
    mainWorksOf,
    materialsOf,
    wateringStageOf,
    routeState: signal<RouteState>("laid"),
    isWateringAsked: signal(false),
    showsFlow: signal(false),
    trenchPlace: signal<TrenchPlace | null>(null),
    history,
    draft,
    project,
    plan,
    drafting,
    shownPlan,
    units: signal<UnitSystem>("metric"),
    blockId,
    block: computed(() => shownPlan.value?.project.blocks.find(({ id }) => id === blockId.value) ?? null),
    row: signal<string | null>(null),
    finding: signal<Finding | null>(null),
    sweep: signal<Sweep | null>(null),
    refusal: signal<Refusal | null>(null),
    opened: signal(0),
    wholeAsked: signal(0),
    drawing: createDrawingState(),
    keeping: createKeepingState(),
    repaint: signal(0),
  };
}
