import type { DocumentKind, Thing } from "../../core/exchange/choice.ts";
import type { LayerKind } from "../../core/exchange/layers/layer.ts";
import type { LayerJob } from "../../core/exchange/layers/layer-job.ts";
import { layerOf } from "../../core/exchange/layers/layers.ts";
import type { ListKind } from "../../core/exchange/lists/list.ts";
import { listOf } from "../../core/exchange/lists/lists.ts";
import type { Plan } from "../../core/plan.ts";

/** What things are called on the page, in the order of the work. */
export const thingNames: Readonly<Record<Thing, string>> = {
  parcels: "Parcels",
  blocks: "Blocks",
  marks: "Marks",
  rows: "Rows",
  vines: "Vines",
  stakes: "Stakes",
  posts: "Posts",
  anchors: "Anchors",
  pegs: "Offset pegs",
  route: "Main line",
  pipes: "Pipes",
  fittings: "Fittings",
  stations: "Trench stations",
  materials: "Shopping list",
  coils: "Cut list",
  prices: "Price list",
  plan: "The whole plan",
};

const layers = [
  ...(["parcels", "blocks", "marks", "rows", "vines", "stakes", "posts", "anchors", "pegs"] as const),
  ...(["route", "pipes", "fittings", "stations"] as const),
] satisfies readonly LayerKind[];
const lists = ["materials", "coils", "prices"] as const satisfies readonly ListKind[];
const documents = ["plan"] as const satisfies readonly DocumentKind[];

/** Something that a plan has, and how many of it; a document is one whole. */
export interface CountedThing {
  readonly thing: Thing;
  readonly count: number | null;
}

/** Everything that can be handed over of a plan, with how many of each there are: none counts as 0. */
export function countedThings(plan: Plan): readonly CountedThing[] {
  const job: LayerJob = { plan, rows: null, pegBeyond_m: 1, baseline: null, hasHeights: false, heightAt: () => null };
  return [
    ...layers.map((thing) => ({ thing, count: layerOf[thing](job).count })),
    ...lists.map((thing) => ({ thing, count: listOf[thing](plan).lines.length })),
    ...documents.map((thing) => ({ thing, count: null })),
  ];
}
