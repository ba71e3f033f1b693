import type { HeightAt } from "../../ground/elevation.ts";
import type { Plan } from "../../plan.ts";
import type { LonLat, PlanePoint } from "../../plane/coordinate.ts";
import type { Row } from "../../rows/rows.ts";
import { known } from "../known.ts";
import type { Place } from "./layer.ts";

/** What the layers are made from. */
export interface LayerJob {
  readonly plan: Plan;
  /** Ids of the rows that go out; null: all. */
  readonly rows: ReadonlySet<string> | null;
  /** How far beyond the anchor (or the end post, where there is none) an offset peg stands, on the line of its row. */
  readonly pegBeyond_m: number;
  /** Station and offset of every point from this line as well; null: only along its own row. */
  readonly baseline: Baseline | null;
  /** Third numbers where they are known; without, every place is without a height. */
  readonly hasHeights: boolean;
  /** The height of the ground; null where nothing is known, and everywhere when heights are not wished. */
  readonly heightAt: HeightAt;
}

/** A straight line that places are measured from: stations from `from` towards `to`, offsets to the right of it. */
export interface Baseline {
  readonly name: string;
  readonly from: LonLat;
  readonly to: LonLat;
}

/** A place of the plan's plane in degrees, with the height of the ground. */
export function placeAt({ plan, heightAt }: LayerJob, at: PlanePoint): Place {
  if (plan.ground === null) throw new Error("a plan with rows has a ground");
  return { at: plan.ground.frame.toLonLat(at), height_m: heightAt(at[0], at[1]) };
}

/** A height that is known along the trench, where heights are wished. */
export function groundAt({ hasHeights }: LayerJob, ground_m: number): number | null {
  return hasHeights ? known(ground_m) : null;
}

/** The rows that go out, with their number in the plan. */
export function rowsOut({ plan, rows }: LayerJob): readonly (readonly [index: number, row: Row])[] {
  return [...(plan.rows?.rows ?? []).entries()].filter(([, { id }]) => rows === null || rows.has(id));
}
