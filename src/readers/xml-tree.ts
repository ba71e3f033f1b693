import { failure, type Outcome } from "../core/outcome.ts";
import { brokenFile } from "./file-findings.ts";

/** An XML text as a document (as @xmldom/xmldom makes it). Entities of its own are refused, and nesting beyond a limit. Findings: `readers/broken-file`. */
export function xmlTree(_text: string, name: string, title: string): Outcome<Document> {
  return failure([brokenFile(name, title, "XML is not read yet")]);
}
