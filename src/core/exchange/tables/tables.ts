import type { HandOverJob } from "../format.ts";
import { layerTable } from "./layer-table.ts";
import { listTable } from "./list-table.ts";
import type { Table } from "./table.ts";

/** Everything of a job as tables: its layers, then its lists. */
export function tablesOf(job: HandOverJob): readonly Table[] {
  return [...job.layers.map((layer) => layerTable(job, layer)), ...job.lists.map(listTable)];
}
