import type { Frame } from "../../../plane/frame.ts";
import { featuresAChunk, type HandOverJob } from "../../format.ts";
import type { LayerFeature, LayerKind, Place } from "../../layers/layer.ts";
import { xmlAttributes } from "../../xml.ts";
import { areaOf_m2, isIn, middleOf } from "./plane-area.ts";

/*
 * Attributes are single letters. Source: ISO 11783-10, version 4.3, by its facets: PFD (A id, C designator, D area in m²), PLN (A 1 boundary,
 * 2 zone; B designator, C area, E id), LSG (A 1 outer, 2 inner, 5 guidance), PNT (A 2 of no kind, 6 first and 7 last of a line, C latitude,
 * D longitude), GGP (A id, B designator), GPN (A id, B designator, C 1 a line from A to B, E 4 not repeated beside it, F 4 not lengthened,
 * I 16 made at a desk).
 */
const boundary = 1;
const zone = 2;
const longest = 32;
/** Designator of what has no name. */
const nameless = "Vineyard";

/** The task file, a piece a few hundred rows. */
export function* taskData(job: HandOverJob): Generator<string> {
  const { plan, layers, names } = job;
  const featuresOf = (kind: LayerKind) => [...(layers.find((layer) => layer.kind === kind)?.features() ?? [])];
  const { ground } = plan;
  if (ground === null) return;
  const fields = fieldsOf(featuresOf("parcels"), featuresOf("blocks"), featuresOf("rows"), ground.frame);
  yield '<?xml version="1.0" encoding="UTF-8"?>\n';
  yield `<ISO11783_TaskData${xmlAttributes({
    VersionMajor: 4,
    VersionMinor: 3,
    ManagementSoftwareManufacturer: "Tautrow",
    ManagementSoftwareVersion: "1",
    DataTransferOrigin: 1,
  })}>\n`;
  let [groups, lines, zones] = [0, 0, 0];
  for (const [f, { parcel, blocks, rows }] of fields.entries()) {
    const designator = parcel === null ? cut(plan.project.name) : names.of(parcel);
    const area_m2 = parcel === null ? 0 : areaOf_m2(parcel.geometry, ground.frame);
    yield `  <PFD${xmlAttributes({ A: `PFD${f + 1}`, C: designator, D: Math.round(area_m2) })}>\n`;
    if (parcel !== null) yield outlines(parcel, boundary, designator, ground.frame, () => ++zones);
    for (const block of blocks) yield outlines(block, zone, names.of(block), ground.frame, () => ++zones);
    for (const [block, ofBlock] of byBlock(rows)) {
      yield `    <GGP${xmlAttributes({ A: `GGP${++groups}`, B: cut(block) })}>\n`;
      for (let from = 0; from < ofBlock.length; from += featuresAChunk) {
        const some = ofBlock.slice(from, from + featuresAChunk);
        yield some.map((row) => guidanceLine(row, `GPN${++lines}`, names.of(row))).join("");
      }
      yield "    </GGP>\n";
    }
    yield "  </PFD>\n";
  }
  yield "</ISO11783_TaskData>\n";
}

interface Field {
  readonly parcel: LayerFeature | null;
  readonly blocks: readonly LayerFeature[];
  readonly rows: readonly LayerFeature[];
}

/** A field a parcel, each with the blocks and rows that lie in it; what lies in none is the first one's. */
function fieldsOf(
  parcels: readonly LayerFeature[],
  blocks: readonly LayerFeature[],
  rows: readonly LayerFeature[],
  frame: Frame,
): readonly Field[] {
  if (parcels.length < 2) return [{ parcel: parcels[0] ?? null, blocks, rows }];
  const fieldOf = (feature: LayerFeature) => {
    const middle = middleOf(feature.geometry, frame);
    const found = parcels.findIndex(({ geometry }) => isIn(middle, geometry, frame));
    return Math.max(0, found);
  };
  const places = { blocks: blocks.map(fieldOf), rows: rows.map(fieldOf) };
  return parcels.map((parcel, f) => ({
    parcel,
    blocks: blocks.filter((_, i) => places.blocks[i] === f),
    rows: rows.filter((_, i) => places.rows[i] === f),
  }));
}

function outlines(
  { geometry }: LayerFeature,
  kind: number,
  designator: string,
  frame: Frame,
  nextId: () => number,
): string {
  if (geometry.shape !== "area") return "";
  return geometry.polygons
    .map((rings) => {
      const area_m2 = areaOf_m2({ shape: "area", polygons: [rings] }, frame);
      const drawn = rings.map((ring, r) => {
        const [first] = ring;
        const closed = first === undefined ? ring : [...ring, first];
        const points = closed.map((place) => `        ${point(place, 2)}\n`).join("");
        return `      <LSG${xmlAttributes({ A: r === 0 ? 1 : 2 })}>\n${points}      </LSG>\n`;
      });
      const attributes = { A: kind, B: designator, C: Math.round(area_m2), E: `PLN${nextId()}` };
      return `    <PLN${xmlAttributes(attributes)}>\n${drawn.join("")}    </PLN>\n`;
    })
    .join("");
}

function guidanceLine({ geometry }: LayerFeature, id: string, designator: string): string {
  if (geometry.shape !== "line") return "";
  const [first, last] = [geometry.places[0], geometry.places.at(-1)];
  if (first === undefined || last === undefined) return "";
  const line = `<LSG A="5">${point(first, 6)}${point(last, 7)}</LSG>`;
  return `      <GPN${xmlAttributes({ A: id, B: designator, C: 1, E: 4, F: 4, I: 16 })}>${line}</GPN>\n`;
}

function point({ at: [lon, lat] }: Place, kind: number): string {
  return `<PNT${xmlAttributes({ A: kind, C: lat.toFixed(9), D: lon.toFixed(9) })}/>`;
}

function byBlock(rows: readonly LayerFeature[]): ReadonlyMap<string, readonly LayerFeature[]> {
  const found = new Map<string, LayerFeature[]>();
  for (const row of rows) {
    const block = row.parts.block ?? "";
    const others = found.get(block) ?? [];
    others.push(row);
    found.set(block, others);
  }
  return found;
}

/** A designator of at most 32 letters, none of them cut in two. */
function cut(name: string | null): string {
  const letters = [...(name ?? "").trim()];
  return letters.length === 0 ? nameless : letters.slice(0, longest).join("").trim();
}
