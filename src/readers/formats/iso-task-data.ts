import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { brokenFile, nothingFound } from "../file-findings.ts";
import type { FoundFile, NamedBytes, Reader } from "../reading.ts";
import { unzipped } from "../unzip.ts";
import { xmlLetters } from "../xml-letters.ts";
import type { XmlElement } from "../xml-steps.ts";
import { childrenOf, xmlTree } from "../xml-tree.ts";
import { foundFields } from "./iso-task-data/found-fields.ts";

const title = "ISO 11783-10 task data";

/**
 * Task data of versions 3 and 4: boundaries, zones, points and guidance lines of its fields, from an archive or from TASKDATA.XML alone. Files
 * that its own refers to are read with it. Findings: `readers/broken-file`, `readers/archive-too-large`, `readers/nothing-found`,
 * `readers/letters-differ`, `readers/without-numbers`, `readers/lines-without-end`.
 */
export const isoTaskDataReader: Reader = {
  title,
  endings: ["zip", "xml"],
  // What is unpacked of it is read as trees, some ten times as large.
  most_bytes: 20e6,
  begins: (head) => isArchive(head) || /<ISO11783_TaskData[\s>]/.test(head),
  read: readTaskData,
};

/** Names stand unpacked before each file of an archive; most of a set is in one folder. */
function isArchive(head: string): boolean {
  return head.startsWith("PK\u{3}\u{4}") && /TASKDATA/i.test(head);
}

/** More is no field and its rows; trees of it would not fit. */
const mostUnpacked_bytes = 30e6;

async function readTaskData(file: NamedBytes): Promise<Outcome<FoundFile>> {
  const { name } = file;
  const bytes = new Uint8Array(await file.slice(0, file.size).arrayBuffer());
  const texts = bytes[0] === 0x50 && bytes[1] === 0x4b ? textsIn(bytes, name) : plainText(bytes, name);
  if (!texts.ok) return texts;
  const findings: Finding[] = [...texts.findings];
  const roots: XmlElement[] = [];
  for (const text of texts.value) {
    const tree = xmlTree(text, name, title);
    if (!tree.ok) return tree;
    // A file beside the task file has its elements in an XFC.
    if (tree.value.name === "ISO11783_TaskData" || tree.value.name === "XFC") roots.push(tree.value);
  }
  if (!roots.some((root) => root.name === "ISO11783_TaskData")) {
    return failure([brokenFile(name, title, "there is no task file in it")]);
  }
  const { features, findings: told } = foundFields(
    name,
    roots.flatMap((root) => childrenOf(root, "PFD")),
  );
  findings.push(...told);
  if (features.length === 0) return failure([...findings, nothingFound(name, title)]);
  return success({ format: title, system: "EPSG 4326, WGS 84", features, questions: [] }, findings);
}

function textsIn(bytes: Uint8Array, name: string): Outcome<readonly string[]> {
  const files = unzipped(bytes, name, (path) => /(^|[/\\])(TASKDATA|PFD\d+)\.XML$/i.test(path), mostUnpacked_bytes);
  if (!files.ok) return files;
  if (!files.value.some((each) => /^TASKDATA\.XML$/i.test(each.name))) {
    return failure([brokenFile(name, title, "there is no TASKDATA.XML in it")]);
  }
  const texts: string[] = [];
  const findings: Finding[] = [];
  for (const each of files.value) {
    const text = xmlLetters(each.bytes, name, title);
    if (!text.ok) return text;
    texts.push(text.value);
    findings.push(...text.findings);
  }
  return success(texts, findings);
}

function plainText(bytes: Uint8Array, name: string): Outcome<readonly string[]> {
  const text = xmlLetters(bytes, name, title);
  return text.ok ? success([text.value], text.findings) : text;
}
