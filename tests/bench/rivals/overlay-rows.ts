import { ClipperD, ClipType, FillRule, type PathsD } from "clipper2-ts";
import type { MainModule } from "clipper2-wasm/dist/clipper2z";
import type { RingSet } from "../../../src/core/plane/overlay.ts";
import { type Point, type TestParcel, toPoints, toRingSet } from "../../support/parcels.ts";
import { stadiumsAround } from "./stadium.ts";

/** Polygon overlays at 0.1 mm, the grid that keeps setbacks to a tenth of a millimetre. */
const decimals = 4;

/** A polygon overlay that takes the bands off the parcel: its input made once, then run as often as wanted. */
export interface OverlayJob {
  readonly run: () => void;
  /** Rings of what is left, from one run. */
  readonly rings: () => RingSet;
}

export function clipperWasmJob(clipper: MainModule, parcel: TestParcel): OverlayJob {
  const paths = (rings: readonly (readonly number[])[]) => {
    const list = new clipper.PathsD();
    for (const ring of rings) list.push_back(clipper.MakePathD([...ring]));
    return list;
  };
  const land = paths(toPoints(parcel.rings).map((ring) => ring.flat()));
  const taken = paths(stadiumsAround(parcel.bands));
  const difference = () => clipper.DifferenceD(land, taken, clipper.FillRule.NonZero, decimals);
  return {
    run: () => difference().delete(),
    rings: () => {
      const left = difference();
      const rings = Array.from({ length: left.size() }, (_, r) => {
        const path = left.get(r);
        return Array.from({ length: path.size() }, (_, i): Point => {
          const { x, y } = path.get(i);
          return [x, y];
        });
      });
      left.delete();
      return toRingSet(rings);
    },
  };
}

export function clipperTsJob(parcel: TestParcel): OverlayJob {
  const land: PathsD = toPoints(parcel.rings).map((ring) => ring.map(([x, y]) => ({ x, y })));
  const taken: PathsD = stadiumsAround(parcel.bands).map((flat) =>
    Array.from({ length: flat.length / 2 }, (_, i) => ({ x: flat[2 * i] ?? 0, y: flat[2 * i + 1] ?? 0 })),
  );
  const difference = (): PathsD => {
    const clipper = new ClipperD(decimals);
    const left: PathsD = [];
    clipper.addSubjectPaths(land);
    clipper.addClipPaths(taken);
    clipper.execute(ClipType.Difference, FillRule.NonZero, left);
    return left;
  };
  return { run: difference, rings: () => toRingSet(difference().map((path) => path.map(({ x, y }): Point => [x, y]))) };
}
