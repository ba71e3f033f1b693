import type { HoseSize } from "../drip/hose-size.ts";
import type { PipeSettings, TrenchSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Fitting } from "./line-fittings.ts";
import type { Tee } from "./tees.ts";
import type { LaidPipe, ProfilePoint, Sleeve, Thrust } from "./trench.ts";

/** The line as it is laid, for counting what it takes. */
export interface TrenchLine {
  readonly rows: Rows;
  readonly pipes: readonly LaidPipe[];
  readonly fittings: readonly Fitting[];
  readonly tees: readonly TappedTee[];
  readonly lows: readonly ProfilePoint[];
  readonly highs: readonly ProfilePoint[];
  readonly sleeves: readonly Sleeve[];
  readonly thrusts: readonly Thrust[];
  readonly bedding_m3: number;
  readonly settings: TrenchSettings;
}

/** A row's tee with the pipe it is on, and what its riser leads to. */
export interface TappedTee extends Tee {
  readonly pipe: PipeSettings;
  readonly hose: HoseSize;
}

/** Things by the size of their pipe, in the order in which sizes are met. */
export function bySize<T extends { readonly pipe: PipeSettings }>(
  things: readonly T[],
): readonly { readonly pipe: PipeSettings; readonly own: readonly T[] }[] {
  const sizes = new Map<string, { readonly pipe: PipeSettings; readonly own: T[] }>();
  for (const thing of things) {
    const there = sizes.get(thing.pipe.size);
    if (there === undefined) sizes.set(thing.pipe.size, { pipe: thing.pipe, own: [thing] });
    else there.own.push(thing);
  }
  return [...sizes.values()];
}
