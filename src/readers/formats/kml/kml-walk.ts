import type { FoundSoFar } from "../../found-so-far.ts";
import type { XmlElement, XmlStep } from "../../xml-steps.ts";
import { childOf, childText } from "../../xml-tree.ts";
import { kmlShape } from "./kml-geometry.ts";
import { addSchema, type KmlTypes, kmlValues } from "./kml-values.ts";

const folders = ["Document", "Folder"];

/** A document or folder that is being gone through. */
interface Around {
  /** The document that is the whole file: its name is no layer's. */
  readonly isFile: boolean;
  name: string | null;
}

/** Everything but documents and folders comes whole. */
export function isKmlWhole(name: string, parents: readonly string[]): boolean {
  const isAround = (each: string) => each === "kml" || folders.includes(each);
  return !(name === "kml" || (folders.includes(name) && parents.every(isAround)));
}

/** Takes a KML text step by step; what it finds goes into `found`. `isOnly`: there is no other text beside it. */
export function createKmlWalk(found: FoundSoFar, isOnly: boolean) {
  const types: KmlTypes = new Map();
  const around: Around[] = [];
  const links: string[] = [];
  let root = "";
  let spaced = 0;
  const placemark = (element: XmlElement): void => {
    const name = childText(element, "name");
    const { geometry, lost, isSpaced } = kmlShape(element);
    if (isSpaced) spaced++;
    if (geometry === null || lost > 0) found.leaveOut(name ?? "a placemark without a name");
    if (geometry === null) return;
    found.add({ name, layer: layerOf(around), geometry, values: kmlValues(element, types) });
  };
  const whole = (element: XmlElement): void => {
    if (element.name === "Placemark") placemark(element);
    else if (element.name === "Schema") addSchema(types, element);
    else if (element.name === "NetworkLink") links.push(linkOf(element));
    else if (element.name === "name") nameLast(around, element.text.trim());
  };
  return {
    /** The name of the outermost element, where the text leads to, and how many placemarks have spaces in their places. */
    seen: () => ({ root, links, spaced }),
    take: (step: Exclude<XmlStep, { readonly kind: "broken" }>): void => {
      if (step.kind === "whole") {
        if (root === "") root = step.element.name;
        whole(step.element);
      } else if (step.kind === "open") {
        if (root === "") root = step.name;
        const isFile = isOnly && step.name === "Document" && around.length === 0;
        if (folders.includes(step.name)) around.push({ isFile, name: null });
      } else if (folders.includes(step.name)) around.pop();
    },
  };
}

function linkOf(link: XmlElement): string {
  const target = childOf(link, "Link") ?? childOf(link, "Url");
  return (target === null ? null : childText(target, "href")) ?? "";
}

function nameLast(around: readonly Around[], name: string): void {
  const last = around.at(-1);
  if (last !== undefined && name !== "") last.name = name;
}

function layerOf(around: readonly Around[]): string | null {
  const names = around.flatMap(({ isFile, name }) => (isFile || name === null ? [] : [name]));
  return names.length === 0 ? null : names.join(" / ");
}
