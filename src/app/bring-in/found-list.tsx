import { useMemo } from "preact/hooks";
import { joinedPoints } from "../../core/drawing/joined-points.ts";
import { isWorkedOut, possibleRoles } from "../../core/drawing/likely-roles.ts";
import type { Frame } from "../../core/plane/frame.ts";
import { roles as allRoles, type Role } from "../../core/project/project.ts";
import type { UnitSystem } from "../../core/units.ts";
import type { FoundFeature } from "../../readers/reading.ts";
import { countOf, type FoundGroup, groupsOf, mostListed, sizeOf } from "./found-groups.ts";
import { roleWords } from "./role-words.ts";

interface FoundListProps {
  readonly features: readonly FoundFeature[];
  readonly roles: readonly (Role | null)[];
  readonly onRoles: (members: readonly number[], role: Role | null) => void;
  readonly onPoint: (members: readonly number[]) => void;
  /** Joins the points of a group into one outline. */
  readonly onJoin: (group: string) => void;
  readonly frame: Frame;
  readonly units: UnitSystem;
}

/** Everything a file holds, by layer and shape, each with the role it is to play; of many things alike the role is chosen for all together. */
export function FoundList(props: FoundListProps) {
  const groups = useMemo(() => groupsOf(props.features), [props.features]);
  return (
    <ul class="found-list">
      {groups.map((group) => (
        <Group key={group.id} group={group} {...props} />
      ))}
    </ul>
  );
}

function Group({
  group,
  features,
  roles,
  onRoles,
  onPoint,
  onJoin,
  frame,
  units,
}: FoundListProps & { readonly group: FoundGroup }) {
  const { members, layer } = group;
  const possible = useMemo(() => rolesForAll(members, features), [members, features]);
  const [only] = members;
  if (members.length === 1 && only !== undefined) {
    return (
      <li class="found-group">
        <Thing {...{ i: only, features, roles, onRoles, onPoint, frame, units }} layer={layer} />
      </li>
    );
  }
  const isRemade = useMemo(
    () => members.slice(0, 1).some((i) => features[i] && isWorkedOut(features[i])),
    [members, features],
  );
  const chosen = new Set(members.map((i) => roles[i] ?? null));
  const [role = null] = chosen;
  return (
    <li class="found-group">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: pointing only shows where the things lie; the select beside does the work. */}
      <div class="found-head" onMouseEnter={() => onPoint(members)} onMouseLeave={() => onPoint([])}>
        <span class="found-what">
          <strong>{layer ?? countOf(group)}</strong>
          {layer !== null && <small>{countOf(group)}</small>}
        </span>
        <RoleSelect
          label={`All ${countOf(group)}${layer === null ? "" : ` of ${layer}`}`}
          role={chosen.size > 1 ? "mixed" : role}
          possible={possible}
          onChange={(next) => onRoles(members, next)}
          onFocus={() => onPoint(members)}
        />
      </div>
      {group.kind === "point" && joinedPoints(members.flatMap((i) => features[i] ?? [])) && (
        <button type="button" class="quiet-button found-join" onClick={() => onJoin(group.id)}>
          Join them into an outline, in this order
        </button>
      )}
      {members.length <= mostListed ? (
        <ul>
          {members.map((i) => (
            <li key={i}>
              <Thing {...{ i, features, roles, onRoles, onPoint, frame, units }} layer={null} />
            </li>
          ))}
        </ul>
      ) : (
        <p class="aside">
          {isRemade ? "A plan works these out by itself." : "So many are taken or left out together."}
        </p>
      )}
    </li>
  );
}

interface ThingProps extends Omit<FoundListProps, "onJoin"> {
  readonly i: number;
  readonly layer: string | null;
}

function Thing({ i, layer, features, roles, onRoles, onPoint, frame, units }: ThingProps) {
  const feature = features[i];
  const possible = useMemo(() => (feature ? possibleRoles(feature) : []), [feature]);
  if (!feature) return null;
  const kind = kindWord(feature);
  const size = sizeOf(feature, frame, units);
  const own = feature.name?.trim() ?? "";
  const name = own || layer || `${kind} ${i + 1}`;
  const told = [own || layer ? kind : "", size, own ? (layer ?? "") : ""].filter((part) => part !== "");
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointing only shows where the thing lies; the select beside does the work.
    <div class="found-thing" onMouseEnter={() => onPoint([i])} onMouseLeave={() => onPoint([])}>
      <span class="found-what">
        <span>{name}</span>
        <small>{told.join(", ")}</small>
      </span>
      <RoleSelect
        label={`${name} is`}
        role={roles[i] ?? null}
        possible={possible}
        onChange={(next) => onRoles([i], next)}
        onFocus={() => onPoint([i])}
      />
    </div>
  );
}

interface RoleSelectProps {
  readonly label: string;
  readonly role: Role | null | "mixed";
  readonly possible: readonly Role[];
  readonly onChange: (role: Role | null) => void;
  readonly onFocus: () => void;
}

function RoleSelect({ label, role, possible, onChange, onFocus }: RoleSelectProps) {
  return (
    <select
      aria-label={label}
      value={role ?? ""}
      class={role === null ? "is-left" : undefined}
      onFocus={onFocus}
      onChange={({ currentTarget: { value } }) => onChange(allRoles.find((each) => each === value) ?? null)}
    >
      {role === "mixed" && (
        <option value="mixed" disabled>
          as chosen below
        </option>
      )}
      <option value="">leave out</option>
      {possible.map((each) => (
        <option key={each} value={each}>
          {roleWords[each]}
        </option>
      ))}
    </select>
  );
}

function rolesForAll(members: readonly number[], features: readonly FoundFeature[]): readonly Role[] {
  const found = members.flatMap((i) => features[i] ?? []);
  return found.reduce<readonly Role[]>((left, feature) => {
    const possible = possibleRoles(feature);
    return left.every((role) => possible.includes(role)) ? left : left.filter((role) => possible.includes(role));
  }, allRoles);
}

function kindWord({ geometry: { type } }: FoundFeature): string {
  if (/Point$/.test(type)) return "point";
  if (/LineString$/.test(type)) return "line";
  return /Polygon$/.test(type) ? "area" : "mixture";
}
