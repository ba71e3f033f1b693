import type { HandOverJob } from "../../format.ts";
import type { Layer, LayerFeature, Place } from "../../layers/layer.ts";
import { metresTo } from "./box.ts";
import { dxfText } from "./dxf-text.ts";
import { extendedData, featureData } from "./feature-data.ts";
import { dxfNumber, group, groups } from "./group.ts";
import { layerLooks, layerName, namesLayerName } from "./layer-looks.ts";

interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number | null;
}

/**
 * A feature as entities of its kind's layer, with its name as TEXT on a layer of names: a POINT, or a POLYLINE a line and a ring (closed).
 * Lines have heights where every place of them has one; a POINT without a height has none, which most programs show as 0.
 */
export function featureDrawn({ system, names }: HandOverJob): (layer: Layer, feature: LayerFeature) => string {
  const perMetre = metresTo(system.unit);
  const point = ({ at, height_m }: Place): Point => {
    const [x, y] = system.fromLonLat(at[0], at[1]);
    return { x, y, z: height_m === null ? null : height_m * perMetre };
  };
  return (layer, feature) => {
    const { geometry, id } = feature;
    const name = names.of(feature);
    const drawnOn = layerName(layer.kind);
    const data = featureData(layer, feature, name);
    const label = (at: Point, turned_deg: number) => {
      const text_m = layerLooks[layer.kind].text_m;
      return (
        groups([0, "TEXT"], [8, namesLayerName(layer.kind)]) +
        placed(at) +
        groups([40, dxfNumber(text_m * perMetre)], [1, dxfText(name)], [50, turned_deg.toFixed(3)]) +
        extendedData([["name-of", id]])
      );
    };
    switch (geometry.shape) {
      case "point": {
        const at = point(geometry.place);
        return groups([0, "POINT"], [8, drawnOn]) + placed(at) + data + label(at, 0);
      }
      case "line": {
        const line = geometry.places.map(point);
        const [first, second] = line;
        if (first === undefined) return "";
        return (
          polyline(drawnOn, line, false, data) + label(first, second === undefined ? 0 : upright_deg(first, second))
        );
      }
      case "area": {
        const rings = geometry.polygons.flatMap((polygon, p) =>
          polygon.map((ring, r) => {
            const place = [
              ["polygon", p + 1],
              ["ring", r + 1],
            ] as const;
            const whole = p === 0 && r === 0 ? data : extendedData([["id", id]]);
            return polyline(drawnOn, ring.map(point), true, whole + extendedPlace(place));
          }),
        );
        const outer = (geometry.polygons[0]?.[0] ?? []).map(point);
        return rings.join("") + (outer.length === 0 ? "" : label(middle(outer), 0));
      }
      default:
        return geometry satisfies never;
    }
  };
}

/** Goes on with the extended data of an entity. */
function extendedPlace(pairs: readonly (readonly [name: string, value: number])[]): string {
  return pairs.map(([name, value]) => group(1000, name) + group(1071, value)).join("");
}

/** Flag 1 closed, 8 with heights (then 32 at every vertex). */
function polyline(layer: string, points: readonly Point[], isClosed: boolean, data: string): string {
  const hasHeights = points.every(({ z }) => z !== null);
  const flag = (isClosed ? 1 : 0) + (hasHeights ? 8 : 0);
  return (
    groups([0, "POLYLINE"], [8, layer], [66, 1], [10, "0.0"], [20, "0.0"], [30, "0.0"], [70, flag]) +
    data +
    points
      .map(({ x, y, z }) => {
        const at = placed({ x, y, z: hasHeights ? z : 0 });
        return groups([0, "VERTEX"], [8, layer]) + at + (hasHeights ? group(70, 32) : "");
      })
      .join("") +
    groups([0, "SEQEND"], [8, layer])
  );
}

function placed({ x, y, z }: Point): string {
  return group(10, dxfNumber(x)) + group(20, dxfNumber(y)) + (z === null ? "" : group(30, dxfNumber(z)));
}

/** The direction of a line for a name along it, so that it is never upside down. */
function upright_deg(from: Point, to: Point): number {
  const turned_deg = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  if (turned_deg > 90) return turned_deg - 180;
  return turned_deg <= -90 ? turned_deg + 180 : turned_deg;
}

function middle(ring: readonly Point[]): Point {
  const mean = (axis: "x" | "y") => ring.reduce((sum, point) => sum + point[axis], 0) / ring.length;
  return { x: mean("x"), y: mean("y"), z: null };
}
