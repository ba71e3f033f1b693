import { type FoundThing, isWorkedOut, type Role } from "../core/index.ts";
import { countOf } from "./count-of.ts";
import { kindOf } from "./role-rules.ts";

/** What became of one thing of a file. */
export interface Fate {
  readonly thing: FoundThing;
  readonly role: Role | null;
  /** Ids of its features in the project; none when it was left out. */
  readonly keys: readonly string[];
}

/** Of more things with the same fate only their number is said. */
const mostSingle = 12;

/** A line for each thing of a file, or for many that went the same way: what it is, and what became of it. */
export function foundReport(fates: readonly Fate[]): string {
  const groups = new Map<string, Fate[]>();
  for (const fate of fates) {
    const group = JSON.stringify([fate.thing.layer, kindOf(fate.thing), fate.role, fate.keys.length > 0]);
    const same = groups.get(group);
    if (same === undefined) groups.set(group, [fate]);
    else same.push(fate);
  }
  return [...groups.values()]
    .flatMap((same) => (same.length > mostSingle ? [together(same)] : same.map(single)))
    .join("");
}

function single({ thing, role, keys }: Fate): string {
  const name = oneLine(thing.name ?? "");
  const what = [name, thing.layer === null ? kindOf(thing) : `${kindOf(thing)} of ${oneLine(thing.layer)}`];
  return `  ${what.filter((part) => part !== "").join(", ")}: ${became(thing, role, keys)}\n`;
}

function together(same: readonly Fate[]): string {
  const [first] = same;
  if (first === undefined) return "";
  const { thing, role } = first;
  const of = thing.layer === null ? "" : ` of ${oneLine(thing.layer)}`;
  return `  ${countOf(same.length, kindOf(thing))}${of}: ${became(thing, role, [...new Set(same.flatMap(({ keys }) => keys))])}\n`;
}

function became(thing: FoundThing, role: Role | null, keys: readonly string[]): string {
  if (role === null) {
    return isWorkedOut(thing)
      ? "left out; a plan works it out by itself (--role takes it)"
      : "left out; no role was told (--role)";
  }
  if (keys.length === 0) return `not taken as ${role}`;
  const [first = "", last = first] = [keys[0], keys.at(-1)];
  return `${role}, ${first === last ? first : `${first} to ${last}`}`;
}

function oneLine(name: string): string {
  const line = name.replace(/\s+/g, " ").trim();
  return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}
