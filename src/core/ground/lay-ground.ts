import type { Finding } from "../finding.ts";
import type { Outcome } from "../outcome.ts";
import { success } from "../outcome.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { planePoint } from "../plane/coordinate.ts";
import { coveredArea_m2 } from "../plane/covered-area.ts";
import { createFrame } from "../plane/frame.ts";
import type {
  BlockArea,
  CrossAlley,
  EdgeSetback,
  GroundSettings,
  HeightGrid,
  KeepOut,
  Parcel,
  SpotHeight,
} from "../project/project.ts";
import {
  areaOfAll,
  blockGround,
  drawnAreas,
  leastShared_m2,
  remainingAreas,
  type SharedGround,
} from "./block-ground.ts";
import { elevationOf } from "./elevation.ts";
import { blockOutside, blocksOverlap, blocksShareGround, edgeOffOutline } from "./findings.ts";
import type { BlockGround, Cause, Closed, Ground, Outline, Passable, Rings } from "./ground.ts";
import { partsOfEdge } from "./inside.ts";
import { centreOf, middleOf } from "./middle.ts";
import { forEachEdge, type ParcelOutline, parcelOutlines } from "./outlines.ts";
import { addSegment, addShape, type SegmentDraft, segmentDraft, segmentsOf } from "./segments.ts";
import { sideLengths } from "./side-lengths.ts";

/** What the ground stage needs of a project. */
export interface GroundInput {
  readonly frameOrigin: LonLat | null;
  readonly parcels: readonly Parcel[];
  readonly edges: readonly EdgeSetback[];
  readonly keepOuts: readonly KeepOut[];
  readonly crossAlleys: readonly CrossAlley[];
  readonly blockAreas: readonly BlockArea[];
  readonly spotHeights: readonly SpotHeight[];
  readonly heightGrids: readonly HeightGrid[];
  readonly settings: GroundSettings;
  readonly blocks: readonly { readonly id: string; readonly rowSpacing_m: number }[];
}

/**
 * Where planting may be, block by block, in the local plane: outlines, and everything that planting keeps its distance from.
 * The planting area is left open: `withPlantingArea` adds it.
 * Findings: `ground/edge-off-outline`, `ground/side-length-differs`, `ground/blocks-share-ground`, `ground/blocks-overlap`,
 * `ground/block-outside`, and those of `elevationOf`.
 */
export function layGround(input: GroundInput): Outcome<Ground> {
  const frame = createFrame(input.frameOrigin ?? middleOf(input.parcels));
  const parcels = parcelOutlines(input.parcels, input.edges, input.settings.setback_m, frame);
  const findings: Finding[] = parcels.astray.map((edge) => edgeOffOutline(edge.line[0] ?? null, edge.key));
  findings.push(...sideLengths(input.edges, parcels, frame));
  const heights = elevationOf(input.spotHeights, frame, input.heightGrids, input.settings.heights);
  findings.push(...heights.findings);
  const causes: Cause[] = [...parcels.causes];
  const segments = segmentDraft();
  addOutlines(segments, parcels.outlines);
  const closed: Closed[] = [];
  const passable: Passable[] = [];
  for (const keepOut of input.keepOuts) {
    const cause = causes.length;
    causes.push({ kind: keepOut.role, feature: keepOut.key, edge: null, name: keepOut.name });
    const own = keepOut.wiresPass ? segmentDraft() : segments;
    const areas = addShape(own, keepOut.shape, frame, keepOut.distance_m, cause, keepOut.key);
    if (keepOut.wiresPass) {
      const { key: feature, largestGap_m } = keepOut;
      passable.push({ feature, segments: segmentsOf(own), closed: areas, largestGap_m });
    } else closed.push(...areas);
  }
  const planting = { segments: segmentsOf(segments), closed: [...closed] };
  for (const alley of input.crossAlleys) {
    const cause = causes.length;
    causes.push({ kind: "cross-alley", feature: alley.key, edge: null, name: alley.name });
    const lines = { ...alley.shape, areas: [] };
    addShape(segments, lines, frame, alley.width_m / 2, cause, alley.key);
    closed.push(...addShape(segments, { points: [], lines: [], areas: alley.shape.areas }, frame, 0, cause, alley.key));
  }
  const shared: SharedGround = { frame, outlines: parcels.outlines, segments, closed, passable };
  const blocks = blockGrounds(input, shared, causes, findings);
  const outlines = parcels.outlines.map((outline) => outline.rings);
  const ground: Ground = {
    frame,
    parcelArea_m2: areaOfAll(outlines),
    elevation: heights.elevation,
    plantingParts: {
      outlines,
      closed: [...planting.closed, ...passable.flatMap((feature) => feature.closed)].map((area) => area.rings),
      segments: joined([planting.segments, ...passable.map((feature) => feature.segments)]),
    },
    plantingArea_m2: null,
    plantingArea: null,
    causes,
    covered: parcels.covered,
    blocks,
  };
  return success(ground, findings);
}

/** Every edge of the outlines at its setback; where outlines overlap or meet, only the outline of them all counts. */
function addOutlines(to: SegmentDraft, outlines: readonly ParcelOutline[]): void {
  const all = outlines.map((outline) => outline.rings);
  for (const { rings, cause, setback_m } of outlines) {
    forEachEdge(rings, (e, px, py, qx, qy) => {
      const distance = Number(setback_m[e]);
      const parts: readonly (readonly [number, number, number, number])[] =
        all.length === 1 ? [[px, py, qx, qy]] : partsOfEdge(px, py, qx, qy, all, (left, right) => left !== right);
      for (const part of parts) addSegment(to, part, distance, Number(cause[e]));
    });
  }
}

function blockGrounds(
  input: GroundInput,
  shared: SharedGround,
  causes: Cause[],
  findings: Finding[],
): readonly BlockGround[] {
  const { frame, outlines } = shared;
  const parcels = outlines.map((outline) => outline.rings);
  const place = (rings: readonly Rings[]) => frame.toLonLat(planePoint(...centreOf(rings)));
  const drawn = input.blocks.map((block) => drawnAreas(block.id, input.blockAreas, frame));
  const others = drawn.flat();
  let restTaken: string | null = null;
  const blocks: BlockGround[] = [];
  input.blocks.forEach((block, i) => {
    const own = drawn[i] ?? [];
    const sharesRest = own.length === 0 && restTaken !== null;
    if (own.length === 0 && restTaken !== null) {
      findings.push(blocksShareGround(place(parcels), block.id, restTaken));
    } else if (own.length === 0) restTaken = block.id;
    const areas = own.length > 0 ? own : remainingAreas(outlines, others);
    const centre = centreOf(own.length > 0 ? own : parcels);
    const whole: readonly Outline[] = sharesRest ? [] : outlines;
    const ground = blockGround(block.id, block.rowSpacing_m, areas, own.length > 0, centre, causes, {
      ...shared,
      outlines: whole,
    });
    if (own.length > 0 && ground.area_m2 < leastShared_m2) findings.push(blockOutside(place(own), block.id));
    drawn.slice(0, i).forEach((other, j) => {
      if (own.length === 0 || other.length === 0) return;
      if (coveredArea_m2([own, other]) > leastShared_m2) {
        findings.push(blocksOverlap(place(own), block.id, input.blocks[j]?.id ?? ""));
      }
    });
    blocks.push(ground);
  });
  return blocks;
}

function joined(all: readonly BlockGround["segments"][]): BlockGround["segments"] {
  return {
    xy: Float64Array.from(all.flatMap((one) => [...one.xy])),
    distance_m: Float64Array.from(all.flatMap((one) => [...one.distance_m])),
    cause: Int32Array.from(all.flatMap((one) => [...one.cause])),
  };
}
