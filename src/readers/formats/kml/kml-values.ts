import { plainValue } from "../../plain-value.ts";
import type { FoundFeature } from "../../reading.ts";
import type { XmlElement } from "../../xml-steps.ts";
import { attributeOf, childOf, childrenOf, childText } from "../../xml-tree.ts";

/** What a schema of the file says its data are, by the data's name: "double". */
export type KmlTypes = Map<string, string>;

const numbers = ["double", "float", "int", "uint", "short", "ushort"];

/** The types that a `Schema` element states. */
export function addSchema(types: KmlTypes, schema: XmlElement): void {
  for (const field of childrenOf(schema, "SimpleField")) {
    const name = attributeOf(field, "name");
    if (name !== null) types.set(name, attributeOf(field, "type") ?? "string");
  }
}

/** The data of a placemark in their order, with its description; as numbers where the file says so, or says nothing and they are written so. */
export function kmlValues(placemark: XmlElement, types: KmlTypes): FoundFeature["values"] {
  const data = childOf(placemark, "ExtendedData");
  const description = childText(placemark, "description");
  const untyped = data === null ? [] : childrenOf(data, "Data");
  const typed = data === null ? [] : childrenOf(data, "SchemaData").flatMap((each) => childrenOf(each, "SimpleData"));
  return [
    ...(description === null ? [] : [["description", description] as const]),
    ...typed.flatMap((each) => valued(attributeOf(each, "name"), each.text.trim(), types)),
    ...untyped.flatMap((each) => valued(attributeOf(each, "name"), childText(each, "value") ?? "", types)),
  ];
}

function valued(name: string | null, text: string, types: KmlTypes): FoundFeature["values"] {
  if (name === null) return [];
  const type = types.get(name) ?? null;
  if (text === "") return type === null || type === "string" ? [[name, ""]] : [];
  if (type === "bool") return [[name, text === "1" || text.toLowerCase() === "true"]];
  if (type === null) return [[name, plainValue(text)]];
  const number = Number(text);
  return [[name, numbers.includes(type) && Number.isFinite(number) ? number : text]];
}
