import { useMemo, useState } from "preact/hooks";
import { frameAt } from "../../core/drawing/frame-at.ts";
import { joinedPoints } from "../../core/drawing/joined-points.ts";
import { likelyRoles } from "../../core/drawing/likely-roles.ts";
import { courseBetween } from "../../core/drawing/place.ts";
import type { TakenThing } from "../../core/drawing/take-found.ts";
import { middleOf as middleOfParcels } from "../../core/ground/middle.ts";
import { lonLat } from "../../core/plane/coordinate.ts";
import { frameReach_m } from "../../core/plane/frame.ts";
import { checkOrigin } from "../../core/project/check-frame.ts";
import type { Role } from "../../core/project/project.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import type { FoundFeature } from "../../readers/reading.ts";
import { useStore } from "../store-context.ts";
import { count, grouped } from "../strip/count.ts";
import { FoundDrawing, middleOf } from "./found-drawing.tsx";
import { groupsOf } from "./found-groups.ts";
import { FoundList } from "./found-list.tsx";

interface FoundPreviewProps {
  readonly features: readonly FoundFeature[];
  readonly units: UnitSystem;
  readonly onTake: (chosen: readonly TakenThing[]) => void;
  readonly onCancel: () => void;
}

/** What was found, drawn and listed; the person says what each thing is, and nothing changes before it is taken in. */
export function FoundPreview({ features: found, units, onTake, onCancel }: FoundPreviewProps) {
  const store = useStore();
  const project = store.project.value;
  const [joined, setJoined] = useState<ReadonlySet<string>>(new Set());
  const features = useMemo(() => withOutlines(found, joined), [found, joined]);
  const likely = useMemo(() => likelyRoles(features, project), [features, project]);
  const [chosen, setChosen] = useState<ReadonlyMap<FoundFeature, Role | null>>(new Map());
  const [pointed, setPointed] = useState<ReadonlySet<number>>(new Set());
  const roles = useMemo(
    () => features.map((feature, i) => (chosen.has(feature) ? chosen.get(feature) : likely[i]) ?? null),
    [features, likely, chosen],
  );
  const middle = useMemo(() => middleOf(features), [features]);
  if (!middle) return <p class="aside">Nothing in it has a place.</p>;
  const frame = frameAt(lonLat(...checkOrigin(middle)));
  const parcels = project?.parcels ?? [];
  const away_m = parcels.length === 0 ? 0 : courseBetween(frame, middle, middleOfParcels(parcels)).length_m;
  const isFar = !(away_m <= 2 * frameReach_m);
  const taken = features.flatMap((thing, i): TakenThing[] => {
    const role = roles[i] ?? null;
    return role === null ? [] : [{ thing, role }];
  });
  return (
    <>
      <div class="found-columns">
        <div>
          <FoundDrawing {...{ features, roles, pointed, frame, units }} parcels={isFar ? [] : parcels} />
          {isFar && (
            <p class="found-far" role="alert">
              This lies {formatQuantity("length", away_m, units)} from the parcels. Is the coordinate system right?
            </p>
          )}
        </div>
        <FoundList
          {...{ features, roles, frame, units }}
          onRoles={(members, role) => {
            const next = new Map(chosen);
            for (const i of members) {
              const feature = features[i];
              if (feature) next.set(feature, role);
            }
            setChosen(next);
          }}
          onPoint={(members) => setPointed(new Set(members))}
          onJoin={(group) => {
            setPointed(new Set());
            setJoined(new Set(joined).add(group));
          }}
        />
      </div>
      <div class="bring-in-foot">
        <p role="status">
          {taken.length === 0
            ? "Say what something is, to take it in."
            : `${grouped(taken.length)} of ${count(features.length, "thing")} will be taken in.`}
        </p>
        <button type="button" class="strong-button" disabled={taken.length === 0} onClick={() => onTake(taken)}>
          {project ? "Take in" : "Begin a project with it"}
        </button>
        <button type="button" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </>
  );
}

/** What was found, with the points of some groups joined into outlines. */
function withOutlines(found: readonly FoundFeature[], joined: ReadonlySet<string>): readonly FoundFeature[] {
  if (joined.size === 0) return found;
  const outlines = new Map<number, FoundFeature | null>();
  for (const { id, members } of groupsOf(found)) {
    const outline = joined.has(id) ? joinedPoints(members.flatMap((i) => found[i] ?? [])) : null;
    if (outline) for (const [k, i] of members.entries()) outlines.set(i, k === 0 ? outline : null);
  }
  return found.flatMap((feature, i) => (outlines.has(i) ? (outlines.get(i) ?? []) : [feature]));
}
