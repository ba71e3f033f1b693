import type { Finding } from "../finding.ts";
import { featureKeys, idOf } from "../identity.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { frameReach_m } from "../plane/frame.ts";
import { checkFrame, checkOrigin } from "./check-frame.ts";
import { type Extent, extentOf, middleOf, united, unwrapped, width_m } from "./extent.ts";
import { featurePart } from "./feature-part.ts";
import { type FeatureParts, joinParts } from "./feature-parts.ts";
import { type FileFeature, fileFeature } from "./file-feature.ts";
import {
  antimeridian,
  duplicateId,
  heightsDropped,
  noParcel,
  noRole,
  outOfRange,
  parcelAssumed,
  perhapsSwapped,
  projected,
  swapped,
  tooWide,
  unknownRole,
} from "./findings.ts";
import { member } from "./json-value.ts";
import { overlappingParcels } from "./overlapping-parcels.ts";
import { isPerhapsSwapped, type PlaceFault, placeFault } from "./place-check.ts";
import type { Json, Role } from "./project.ts";
import type { DrawnShape } from "./read-shape.ts";
import { rememberedByObject } from "./remembered-by-object.ts";
import { roleOf } from "./role.ts";

export interface FeaturesReading extends FeatureParts {
  /** Middle of the parcels' box, or null without parcels. */
  readonly middle: LonLat | null;
}

interface Used {
  readonly feature: FileFeature;
  readonly role: Role;
  readonly shape: DrawnShape;
  readonly extent: Extent | null;
}

/**
 * Reads the features of a document: what each is, whether it can be used, and what it gives the project.
 * `system` is the coordinate system that the file names, for the sentence about projected metres.
 * Findings: `project/no-parcel`, `project/projected`, `project/swapped`, `project/perhaps-swapped`, `project/out-of-range`,
 * `project/too-wide`, `project/unknown-role`, `project/no-role`, `project/duplicate-id`, `project/parcels-overlap`, notes of what was
 * mended, and those of `fileFeature` and `featurePart`.
 */
export function readFeatures(entries: readonly Json[], system: string | null): FeaturesReading {
  const keys = featureKeys(entries);
  const features = entries.map((entry, i) => fileFeature(entry, keys[i] ?? `#${i}`));
  const findings: Finding[] = [...duplicates(entries, features), ...features.flatMap((feature) => feature.findings)];
  const places = placeFaults(features, system);
  findings.push(...places.findings);
  const high = features.filter(
    ({ hasHeights, properties }) => hasHeights && member(properties, "role") !== "elevation",
  );
  if (high[0] !== undefined) findings.push(heightsDropped(high[0].where, high.length));

  const named = features.filter((feature) => !places.astray.has(feature)).flatMap(withShape);
  const withRoles = assignRoles(named, features);
  findings.push(...withRoles.findings);
  const { used, from_deg, isUnwrapped } = inOnePiece(withRoles.used);
  if (isUnwrapped !== null) findings.push(antimeridian(isUnwrapped.where));
  const ground = used.filter(({ role }) => role === "parcel");
  findings.push(...doubtfulPlace(ground));

  const whole = boxOf(used);
  const isTooWide = whole !== null && width_m(whole) > 2 * frameReach_m;
  if (isTooWide) findings.push(tooWide(furthest(used), width_m(whole), 2 * frameReach_m));
  const middle = boxOf(ground) ?? whole;
  const origin = middle === null || isTooWide ? null : checkOrigin(middleOf(middle));
  const [lon = null, lat = null] = origin ?? [];
  const parts = joinParts(used.map(({ feature, role }) => partOnce(feature, role, from_deg, lon, lat)));
  findings.push(...parts.findings);
  if (parts.parcels.length === 0 && !hasBrokenParcel(features, findings)) findings.push(noParcel());
  if (parts.parcels.length > 0 && origin !== null)
    findings.push(...overlappingParcels(parts.parcels, checkFrame(...origin)));
  return { ...parts, findings, middle: parts.parcels.length === 0 || middle === null ? null : middleOf(middle) };
}

function duplicates(entries: readonly Json[], features: readonly FileFeature[]): readonly Finding[] {
  return features.flatMap(({ where }, i) => {
    const id = idOf(entries[i]);
    return id === null || id === "" || id === where.feature ? [] : [duplicateId(where, id)];
  });
}

/** Features that lie where none can, and one finding for all that are projected or swapped: the cause is one. */
function placeFaults(
  features: readonly FileFeature[],
  system: string | null,
): { readonly astray: ReadonlySet<FileFeature>; readonly findings: readonly Finding[] } {
  const faults = features.flatMap((feature) => {
    const found = faultOnce(feature);
    return found === null ? [] : [{ feature, ...found }];
  });
  const findings = (["projected", "swapped"] as const).flatMap((fault) => {
    const all = faults.filter((each) => each.fault === fault);
    const [first] = all;
    if (first === undefined) return [];
    const [x, y] = first.at;
    const { where } = first.feature;
    return [
      fault === "projected" ? projected(where, x, y, all.length - 1, system) : swapped(where, x, y, all.length - 1),
    ];
  });
  const off = faults.filter(({ fault }) => fault === ("out-of-range" satisfies PlaceFault));
  return {
    astray: new Set(faults.map(({ feature }) => feature)),
    findings: [...findings, ...off.map(({ feature, at: [x, y] }) => outOfRange(feature.where, x, y))],
  };
}

type Shaped = Pick<Used, "feature" | "shape">;

function withShape(feature: FileFeature): readonly Shaped[] {
  return feature.shape === null ? [] : [{ feature, shape: feature.shape }];
}

/** Roles as stated. Areas without one are parcels when no feature of the file has that role. */
function assignRoles(
  shaped: readonly Shaped[],
  all: readonly FileFeature[],
): { readonly used: readonly Omit<Used, "extent">[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const hasParcel = all.some(({ properties }) => {
    const reading = roleOf(properties);
    return reading.kind === "known" && reading.role === "parcel";
  });
  const used = shaped.flatMap((each) => {
    const { where, properties } = each.feature;
    const reading = roleOf(properties);
    if (reading.kind === "known") return [{ ...each, role: reading.role }];
    if (reading.kind === "unknown") {
      findings.push(unknownRole(where, reading.written, reading.nearest));
      return [];
    }
    if (hasParcel || each.shape.areas.length === 0) {
      findings.push(noRole(where));
      return [];
    }
    findings.push(parcelAssumed(where));
    return [{ ...each, role: "parcel" as const }];
  });
  return { used, findings };
}

/** Longitudes counted on across 180, from the first parcel (or the first feature) of the file. */
function inOnePiece(used: readonly Omit<Used, "extent">[]): {
  readonly used: readonly Used[];
  readonly from_deg: number;
  readonly isUnwrapped: FileFeature | null;
} {
  const first = used.find(({ role }) => role === "parcel") ?? used[0];
  // To the whole degree: dragging the first corner is no reason to read everything anew.
  const from_deg = Math.round(first?.shape.areas[0]?.[0]?.[0]?.[0] ?? first?.feature.where.at?.[0] ?? 0);
  let isUnwrapped: FileFeature | null = null;
  const placed = used.map((each) => {
    const placed = placedOnce(each.feature, from_deg);
    if (placed.shape !== each.shape) isUnwrapped ??= each.feature;
    return { ...each, ...placed };
  });
  return { used: placed, from_deg, isUnwrapped };
}

/** A parcel that cannot be used has its own error; that there is none would only repeat it. */
function hasBrokenParcel(features: readonly FileFeature[], findings: readonly Finding[]): boolean {
  const broken = new Set(findings.filter(({ severity }) => severity === "error").map(({ feature }) => feature));
  return features.some(({ where, properties }) => {
    const reading = roleOf(properties);
    return (
      broken.has(where.feature) && (reading.kind === "none" || (reading.kind === "known" && reading.role === "parcel"))
    );
  });
}

function doubtfulPlace(parcels: readonly Used[]): readonly Finding[] {
  const { where } = parcels[0]?.feature ?? {};
  if (where?.at == null || !isPerhapsSwapped(where.at)) return [];
  return [perhapsSwapped(where, where.at[0], where.at[1])];
}

function boxOf(used: readonly Used[]): Extent | null {
  return used.reduce<Extent | null>((box, { extent }) => (extent === null ? box : united(box, extent)), null);
}

/** The feature furthest from where most of them are: likely the one that is wrong. */
function furthest(used: readonly Used[]): FileFeature["where"] {
  const placed = used.flatMap(({ feature, extent }) => (extent === null ? [] : [{ feature, extent }]));
  const sorted = (pick: (extent: Extent) => number): number => {
    const values = placed.map(({ extent }) => pick(extent)).sort((a, b) => a - b);
    return values[Math.floor((values.length - 1) / 2)] ?? 0;
  };
  const most = middleOf({
    west: sorted(({ west }) => west),
    east: sorted(({ east }) => east),
    south: sorted(({ south }) => south),
    north: sorted(({ north }) => north),
  });
  const far = placed.reduce<{ readonly away: number; readonly feature: FileFeature | null }>(
    (best, { feature, extent }) => {
      const corners = [extent.west, extent.east].flatMap((lon) =>
        [extent.south, extent.north].map((lat) => [lon, lat]),
      );
      const away = Math.max(...corners.map(([lon = 0, lat = 0]) => Math.hypot(lon - most[0], lat - most[1])));
      return away > best.away ? { away, feature } : best;
    },
    { away: -1, feature: null },
  );
  return far.feature?.where ?? { feature: "#0", at: null };
}

const faultOnce = rememberedByObject(({ shape }: FileFeature) => (shape === null ? null : placeFault(shape)));

const placedOnce = rememberedByObject(({ shape }: FileFeature, from_deg: number) => {
  const placed = unwrapped(shape ?? { points: [], lines: [], areas: [] }, from_deg);
  return { shape: placed, extent: extentOf(placed) };
});

const partOnce = rememberedByObject(
  (feature: FileFeature, role: Role, from_deg: number, lon_deg: number | null, lat_deg: number | null) => {
    const frame = lon_deg === null || lat_deg === null ? null : checkFrame(lon_deg, lat_deg);
    return feature.shape === null ? {} : featurePart(feature, role, placedOnce(feature, from_deg).shape, frame);
  },
);
