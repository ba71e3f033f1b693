import type { FoundFeature } from "../../reading.ts";
import type { XmlElement } from "../../xml-steps.ts";
import { attributeOf, childOf, childrenOf } from "../../xml-tree.ts";
import { isRing, waysOf } from "./coord-geom.ts";
import { placesOfThing, type SurveyPlace, type SurveyThing } from "./survey.ts";
import { placeOf, placesInList } from "./survey-places.ts";

/** An element that may be a thing, with the name of what it stands in. */
export interface SurveyElement {
  readonly element: XmlElement;
  readonly layer: string | null;
}

/** What elements come to. */
export interface SurveyThings {
  readonly things: readonly SurveyThing[];
  readonly unread: ReadonlyMap<string, number>;
  readonly curves: number;
  readonly broken: { readonly count: number; readonly example: string };
}

/**
 * Elements as things: points, parcels, plan features, alignments, and what surfaces are made of. `features` are those that points refer to. Null when
 * they have more corners than `most`.
 */
export function surveyThings(
  elements: readonly SurveyElement[],
  features: ReadonlyMap<string, XmlElement>,
  most: number,
): SurveyThings | null {
  const named = new Map<string, XmlElement>();
  for (const { element } of elements) {
    const name = attributeOf(element, "name");
    if (element.name === "CgPoint" && name !== null && !named.has(name)) named.set(name, element);
  }
  const things: SurveyThing[] = [];
  const unread = new Map<string, number>();
  let curves = 0;
  let corners = 0;
  let broken = { count: 0, example: "" };
  const leave = (element: XmlElement, name: string | null) => {
    broken = { count: broken.count + 1, example: broken.example || `${element.name} ${name ?? ""}`.trim() };
  };
  const miss = (kind: string) => unread.set(kind, (unread.get(kind) ?? 0) + 1);

  for (const { element, layer } of elements) {
    const name = attributeOf(element, "name") ?? attributeOf(element, "id");
    const values = valuesOf(element, features);
    const add = (shape: SurveyThing["shape"]) => {
      const thing = { name, layer, values, shape };
      corners += placesOfThing(thing).length;
      things.push(thing);
    };
    if (corners > most) return null;
    switch (element.name) {
      case "CgPoint":
      case "P": {
        const at = placeOf(element, named);
        if (at === null) leave(element, name);
        else add({ kind: "point", at });
        break;
      }
      case "Breakline":
      case "Boundary": {
        const places = listedPlaces(element);
        if (places === null) leave(element, name);
        else
          add(
            element.name === "Boundary" && places.length > 2
              ? { kind: "area", rings: [open(places)] }
              : { kind: "lines", lines: [places] },
          );
        break;
      }
      default: {
        if (childOf(element, "Profile") !== null) miss("Profile");
        const shapes: (readonly SurveyPlace[])[] = [];
        const geometries = childrenOf(element, "CoordGeom");
        if (geometries.length === 0 && childOf(element, "Parcels") === null) leave(element, name);
        for (const geometry of geometries) {
          const ways = waysOf(geometry, named);
          if (ways === "broken") leave(element, name);
          else if ("unread" in ways) miss(ways.unread);
          else {
            curves += ways.curves;
            shapes.push(...ways.lines);
          }
        }
        if (shapes.length === 0) break;
        const isArea = element.name === "Parcel" && shapes.every(isRing);
        add(isArea ? { kind: "area", rings: shapes.map(open) } : { kind: "lines", lines: shapes });
      }
    }
  }
  return corners > most ? null : { things, unread, curves, broken };
}

function listedPlaces(element: XmlElement): readonly SurveyPlace[] | null {
  const [flat, high] = [childOf(element, "PntList2D"), childOf(element, "PntList3D")];
  if (high !== null) return placesInList(high.text, 3);
  return flat === null ? null : placesInList(flat.text, 2);
}

/** A ring without its first place once more. */
function open(ring: readonly SurveyPlace[]): readonly SurveyPlace[] {
  return isRing(ring) ? ring.slice(0, -1) : ring;
}

/** Code and description, then the properties of its Feature, or of the one it refers to. */
function valuesOf(element: XmlElement, features: ReadonlyMap<string, XmlElement>): FoundFeature["values"] {
  const own = childrenOf(element, "Feature");
  const reference = attributeOf(element, "featureRef");
  const referred = reference === null ? undefined : features.get(reference);
  const attributes = ["code", "desc", "parcelType", "area"].flatMap((name) => {
    const value = attributeOf(element, name);
    return value === null || value === "" ? [] : [[name, value] as const];
  });
  const properties = [...own, ...(referred === undefined ? [] : [referred])].flatMap((feature) =>
    childrenOf(feature, "Property").flatMap((property) => {
      const [label, value] = [attributeOf(property, "label"), attributeOf(property, "value")];
      return label === null || value === null ? [] : [[label, value] as const];
    }),
  );
  return [...attributes, ...properties];
}
