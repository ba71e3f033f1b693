import { failure, type Outcome, success } from "../core/outcome.ts";
import { brokenFile } from "./file-findings.ts";
import { type XmlElement, xmlSteps } from "./xml-steps.ts";

/**
 * An XML text as a tree, for files that are not long; what may be long goes through `xmlSteps`. `name` is that of the file, `title` its format.
 * Findings: `readers/broken-file`.
 */
export function xmlTree(text: string, name: string, title: string): Outcome<XmlElement> {
  let root: XmlElement | null = null;
  for (const step of xmlSteps(text, () => true)) {
    if (step.kind === "broken") return failure([brokenFile(name, title, step.why)]);
    if (step.kind === "whole") root = step.element;
  }
  return root === null ? failure([brokenFile(name, title, "there is nothing in it")]) : success(root);
}

/** The children of a name (without prefix). */
export function childrenOf(element: XmlElement, name: string): readonly XmlElement[] {
  return element.children.filter((child) => child.name === name);
}

/** The first child of a name, or null. */
export function childOf(element: XmlElement, name: string): XmlElement | null {
  return element.children.find((child) => child.name === name) ?? null;
}

/** The trimmed text of the first child of a name; null without one, or an empty one. */
export function childText(element: XmlElement, name: string): string | null {
  const text = childOf(element, name)?.text.trim() ?? "";
  return text === "" ? null : text;
}

/** Every element of a name inside another, however deep, in the order of the file. */
export function* elementsOf(element: XmlElement, name: string): Generator<XmlElement> {
  for (const child of element.children) {
    if (child.name === name) yield child;
    yield* elementsOf(child, name);
  }
}

/** An attribute as it stands; null without it. */
export function attributeOf(element: Pick<XmlElement, "attributes">, name: string): string | null {
  return element.attributes.find(([each]) => each === name)?.[1] ?? null;
}
