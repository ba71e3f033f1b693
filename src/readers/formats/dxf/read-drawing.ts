import type { Block, Drawing, DrawnThing } from "./drawn.ts";
import { type DxfRecord, dxfRecords, numberOf, textOf } from "./dxf-groups.ts";
import { decoded } from "./dxf-strings.ts";
import { cornersIn, thingOf } from "./thing-of.ts";

/** What goes through a drawing gives at its end: the drawing, or half a sentence that says why it is none. */
export type DrawingRead = Drawing | string;

/** Most things of one drawing: a person cannot choose from more, and they fit into memory. */
export const mostThings = 200_000;
/** Corners of all of it. */
export const mostCorners = 600_000;
/** What is read before whoever reads may do something in between. */
const recordsAStep = 5000;

/** Goes through a DXF text, giving how many letters are read now and then. Sections that it does not know are passed over. */
export function* readDrawing(text: string): Generator<number, DrawingRead> {
  let section = "";
  let units: number | null = null;
  const blocks = new Map<string, Block>();
  const things: DrawnThing[] = [];
  const others = new Map<string, number>();
  let curves = 0;
  let broken = { count: 0, example: "" };
  let block: { name: string; base: Block["base"]; things: DrawnThing[] } | null = null;
  /** A POLYLINE or INSERT whose vertices or attributes follow. */
  let open: { record: DxfRecord; parts: DxfRecord[] } | null = null;
  let count = 0;
  let total = 0;
  let corners = 0;

  const finish = (record: DxfRecord, parts: readonly DxfRecord[]) => {
    // Sheets around the drawing are no ground.
    if (numberOf(record, 67, 0) === 1) return;
    const read = thingOf(record, parts);
    if (read === "broken") broken = { count: broken.count + 1, example: broken.example || `a ${record.type}` };
    else if (read === "other") others.set(record.type, (others.get(record.type) ?? 0) + 1);
    else {
      (block?.things ?? things).push(read.thing);
      curves += read.curves;
      total++;
      corners += cornersIn(read.thing.shape);
    }
  };

  for (const step of dxfRecords(text)) {
    if (step.kind === "broken") return step.why;
    if (++count % recordsAStep === 0) yield step.at;
    if (total > mostThings || corners > mostCorners) return "too much";
    const { record } = step;
    if (open !== null) {
      if (record.type === "VERTEX" || record.type === "ATTRIB") {
        open.parts.push(record);
        continue;
      }
      finish(open.record, open.parts);
      open = null;
      if (record.type === "SEQEND") continue;
    }
    if (record.type === "SECTION") {
      section = textOf(record, 2)?.trim().toUpperCase() ?? "";
      if (section === "HEADER") units = unitsOf(record);
    } else if (record.type === "ENDSEC") section = "";
    else if (record.type === "EOF") break;
    else if (section === "BLOCKS" && record.type === "BLOCK") {
      const name = decoded(textOf(record, 2)?.trim() ?? "");
      block = { name, base: [numberOf(record, 10, 0), numberOf(record, 20, 0), numberOf(record, 30, 0)], things: [] };
    } else if (section === "BLOCKS" && record.type === "ENDBLK") {
      if (block !== null) blocks.set(block.name, { base: block.base, things: block.things });
      block = null;
    } else if (section === "ENTITIES" || (section === "BLOCKS" && block !== null)) {
      const hasParts = record.type === "POLYLINE" || (record.type === "INSERT" && numberOf(record, 66, 0) === 1);
      if (hasParts) open = { record, parts: [] };
      else finish(record, []);
    }
  }
  return { units, blocks, things, others, curves, broken };
}

/** Header variables stand in the record of their section: a name (9), then its value. */
function unitsOf({ groups }: DxfRecord): number | null {
  const at = groups.findIndex(({ code, value }) => code === 9 && value.trim() === "$INSUNITS");
  const value = at < 0 ? undefined : groups[at + 1];
  return value === undefined ? null : Number(value.value);
}
