import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { Told } from "./found-findings.ts";
import { foundShape, kindsIn, positionsIn } from "./found-shape.ts";
import type { FoundThing } from "./found-thing.ts";
import { placeOf } from "./position.ts";

/** Something to be said of one found thing; what has the same cause is said once for all. */
export interface Remark {
  readonly cause: string;
  readonly thing: FoundThing;
  /** A length, of which the largest is said. */
  readonly most_m?: number;
  /** Names, of which each is said once. */
  readonly words?: readonly string[];
  readonly finding: (told: Told, most_m: number, words: readonly string[]) => Finding;
}

/** One finding a cause, in the order the causes came up. */
export function told(remarks: readonly Remark[]): readonly Finding[] {
  const byCause = new Map<string, Remark[]>();
  for (const remark of remarks) {
    const same = byCause.get(remark.cause);
    if (same === undefined) byCause.set(remark.cause, [remark]);
    else same.push(remark);
  }
  return [...byCause.values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    const names = calledAll(same.map(({ thing }) => thing));
    const most_m = same.reduce((most, remark) => Math.max(most, remark.most_m ?? 0), 0);
    const words = [...new Set(same.flatMap((remark) => remark.words ?? []))];
    return [first.finding({ names, count: same.length, at: placeIn(first.thing) }, most_m, words)];
  });
}

/** What things are called in a sentence: by their names, those without one by their number. */
function calledAll(things: readonly FoundThing[]): readonly string[] {
  const named = new Set<string>();
  const counts = new Map<string, number>();
  for (const thing of things) {
    const name = thing.name?.trim() ?? "";
    const kind = kindsIn(foundShape(thing.geometry))[0] ?? "thing";
    const group = thing.layer === null ? kind : `${kind} of ${shortened(thing.layer)}`;
    if (name !== "") named.add(`“${shortened(name)}”`);
    else counts.set(group, (counts.get(group) ?? 0) + 1);
  }
  return [
    ...named,
    ...[...counts].map(([group, count]) => {
      const article = group.startsWith("area") ? "an" : "a";
      return count === 1 ? `${article} ${group}` : `${count} ${group.replace(/^\w+/, "$&s")}`;
    }),
  ];
}

function shortened(name: string): string {
  return name.length > 60 ? `${name.slice(0, 59)}…` : name;
}

function placeIn(thing: FoundThing): LonLat | null {
  const [first] = positionsIn(foundShape(thing.geometry));
  const place = placeOf(first);
  return Math.abs(place[0]) <= 180 && Math.abs(place[1]) <= 90 ? place : null;
}
