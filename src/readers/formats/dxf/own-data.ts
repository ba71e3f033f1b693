import { applicationName } from "../../../core/exchange/formats/dxf/feature-data.ts";
import type { FoundFeature } from "../../reading.ts";
import type { OwnData } from "./drawn.ts";
import { type DxfRecord, numberIn } from "./dxf-groups.ts";
import { decoded } from "./dxf-strings.ts";

/** What our own drawings say of a thing in extended data: a name, then its value by type (see `extendedData`); null without. */
export function ownDataOf({ groups }: DxfRecord): OwnData | null {
  const start = groups.findIndex(({ code, value }) => code === 1001 && value.trim() === applicationName);
  if (start < 0) return null;
  const behind = groups.findIndex(({ code }, i) => i > start && code === 1001);
  const own = groups.slice(start + 1, behind < 0 ? undefined : behind);
  const pairs: FoundFeature["values"][number][] = [];
  for (let i = 0; i < own.length; ) {
    const name = own[i];
    if (name?.code !== 1000) {
      i++;
      continue;
    }
    const { value, next } = valueAt(own, i + 1);
    if (value !== null) pairs.push([decoded(name.value), value]);
    i = next;
  }
  return { pairs };
}

function valueAt(groups: DxfRecord["groups"], at: number) {
  const first = groups[at];
  if (first === undefined) return { value: null, next: at };
  switch (first.code) {
    case 1000:
      return { value: decoded(first.value), next: at + 1 };
    case 1040:
    case 1071:
      return { value: numberIn(first.value), next: at + 1 };
    case 1070:
      return { value: numberIn(first.value) === 1, next: at + 1 };
    case 1002: {
      const end = groups.findIndex(({ code, value }, i) => i > at && code === 1002 && value.trim() === "}");
      const last = end < 0 ? groups.length : end;
      const pieces = groups.slice(at + 1, last).flatMap(({ code, value }) => (code === 1000 ? [value] : []));
      return { value: decoded(pieces.join("")), next: last + 1 };
    }
    default:
      return { value: null, next: at + 1 };
  }
}

/** A value of it by name. */
export function ownValue(own: OwnData | null, name: string): string | number | boolean | null {
  return own?.pairs.find(([each]) => each === name)?.[1] ?? null;
}
