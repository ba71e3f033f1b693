import { edgeBearing_deg } from "../ground/edge-bearing.ts";
import { centreOf } from "../ground/middle.ts";
import { parcelOutlines, planeRings } from "../ground/outlines.ts";
import { type LonLat, planePoint } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import { withDocumentMember } from "../project/document.ts";
import { isJsonObject, member, withMember } from "../project/json-value.ts";
import type { FeatureKey, Json, JsonObject, Project, ProjectDocument } from "../project/project.ts";
import { sectionOf } from "../project/setting-path.ts";
import { blockId } from "../project/settings.ts";
import { frameAt, originOf } from "./frame-at.ts";

/** Decimals of a bearing that was taken from an edge: a row of a kilometre ends 0.02 mm beside where it did. */
const decimals = 6;

/** The edge features that the rows of some block run along. */
export function bearingEdges({ blocks }: Project): ReadonlySet<FeatureKey> {
  return new Set(blocks.flatMap(({ rows: { bearing } }) => (bearing.kind === "edge" ? [bearing.edge] : [])));
}

/**
 * The document with the bearing as a number wherever rows run along an edge feature that goes: the bearing they are planted at before.
 * "longest-edge" where that edge lay on no outline, for that is what was planted along then.
 */
export function withBearingsStated(
  document: ProjectDocument,
  project: Project,
  gone: ReadonlySet<FeatureKey>,
): ProjectDocument {
  const settings = document.tautrow;
  if (gone.size === 0 || !isJsonObject(settings)) return document;
  const bearings = blockBearings(project, gone);
  if (bearings.size === 0 && !namesEdge(settings, gone)) return document;
  let next = inOwner(settings, project, gone, bearings);
  const blocks = member(next, "blocks");
  if (Array.isArray(blocks)) {
    const changed = blocks.map((block: Json, i): Json => {
      const own = bearings.get(blockId(block, i));
      return own === undefined || !isJsonObject(block) ? block : inBlock(block, next, gone, own);
    });
    next = withMember(next, "blocks", changed);
  }
  return withDocumentMember(document, "tautrow", next);
}

/** The bearing each block is planted at, of those that follow one of the edges. */
function blockBearings(project: Project, edges: ReadonlySet<FeatureKey>): ReadonlyMap<string, number | string> {
  const bearings = new Map<string, number | string>();
  const following = project.blocks.flatMap(({ id, rows: { bearing } }) =>
    bearing.kind === "edge" && edges.has(bearing.edge) ? [{ id, edge: bearing.edge }] : [],
  );
  if (following.length === 0) return bearings;
  const lines = project.edges.filter(({ key }) => edges.has(key)).map(({ key, line }) => ({ key, line }));
  const origin = originOf(project) ?? lines[0]?.line[0];
  if (origin === undefined) return new Map(following.map(({ id }) => [id, "longest-edge"]));
  const frame = frameAt(origin);
  const { covered, outlines } = parcelOutlines(project.parcels, project.edges, 0, frame);
  for (const { id, edge } of following) {
    const own = project.blockAreas
      .filter(({ block }) => block === id)
      .flatMap(({ polygons }) => polygons.map((polygon) => planeRings(polygon, frame)));
    const centre = centreOf(own.length > 0 ? own : outlines.map(({ rings }) => rings));
    // A parcel that is being mended has no sides; then the drawn edge itself is all there is.
    const sides =
      outlines.length > 0
        ? (covered.get(edge) ?? [])
        : lines.filter(({ key }) => key === edge).flatMap(({ line }) => segmentsOf(line, frame));
    const bearing = edgeBearing_deg(sides, frame.convergence_deg(planePoint(centre[0], centre[1])));
    bearings.set(id, bearing === null ? "longest-edge" : Number(bearing.toFixed(decimals)));
  }
  return bearings;
}

function segmentsOf(line: readonly LonLat[], frame: Frame): readonly Float64Array[] {
  const places = line.map((at) => frame.toPlane(at));
  return places.slice(1).map((place, i) => Float64Array.of(...(places[i] ?? place), ...place));
}

/** The project's own bearing becomes that of the first block that follows it. */
function inOwner(
  settings: JsonObject,
  project: Project,
  gone: ReadonlySet<FeatureKey>,
  bearings: ReadonlyMap<string, number | string>,
): JsonObject {
  if (!namesEdge(settings, gone)) return settings;
  const first = project.blocks.find(({ id }) => bearings.has(id))?.id;
  return withBearing(settings, (first === undefined ? undefined : bearings.get(first)) ?? "longest-edge");
}

/** A block's own bearing; also stated where what it takes from the project differs in a decimal, being true at another place. */
function inBlock(
  block: JsonObject,
  settings: JsonObject,
  gone: ReadonlySet<FeatureKey>,
  bearing: number | string,
): JsonObject {
  if (namesEdge(block, gone)) return withBearing(block, bearing);
  return member(sectionOf(settings, "rows"), "bearing") === bearing ? block : withBearing(block, bearing);
}

function namesEdge(owner: JsonObject, gone: ReadonlySet<FeatureKey>): boolean {
  const bearing = member(sectionOf(owner, "rows"), "bearing");
  const edge = isJsonObject(bearing) ? member(bearing, "edge") : undefined;
  return edge !== undefined && gone.has(String(edge));
}

function withBearing(owner: JsonObject, bearing: number | string): JsonObject {
  return withMember(owner, "rows", withMember(sectionOf(owner, "rows"), "bearing", bearing));
}
