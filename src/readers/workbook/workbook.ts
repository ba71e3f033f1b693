import { failure, type Outcome, success } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { UnzippedFile } from "../unzip.ts";
import type { XmlElement } from "../xml-steps.ts";
import { attributeOf, elementsOf, xmlTree } from "../xml-tree.ts";
import { elementsIn } from "./elements-in.ts";
import { textsIn } from "./texts-in.ts";

/** What the sheets of a workbook share. */
export interface Workbook {
  readonly sheets: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly shared: readonly string[];
  /** Numbers of the cell styles that show a number as a date. */
  readonly dateStyles: ReadonlySet<number>;
  readonly isFrom1904: boolean;
}

/** Shared texts of more bytes than this are not read: they are held all at once. */
const mostShared_bytes = 50e6;
const mostStyles_bytes = 5e6;

/** The parts of a workbook that are unpacked. */
export function isPartOfWorkbook(path: string): boolean {
  return /^xl\/(?:workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|styles\.xml|worksheets\/[^/]+\.xml)$/i.test(
    path,
  );
}

/** A workbook by its parts. Source: ECMA-376 part 1, section 18.2 (from memory). Findings: `readers/broken-file`. */
export function workbookOf(files: readonly UnzippedFile[], name: string, title: string): Outcome<Workbook> {
  const part = (path: string) => files.find((file) => file.path.toLowerCase() === path.toLowerCase())?.bytes;
  const [main, links] = [part("xl/workbook.xml"), part("xl/_rels/workbook.xml.rels")];
  if (main === undefined || links === undefined)
    return failure([brokenFile(name, title, "it has no list of its sheets")]);
  const book = tree(main, name, title);
  const linked = tree(links, name, title);
  const styles = tree(part("xl/styles.xml")?.subarray(0, mostStyles_bytes) ?? null, name, title);
  for (const each of [book, linked, styles]) if (!each.ok) return each;
  const shared = part("xl/sharedStrings.xml") ?? new Uint8Array();
  if (shared.length > mostShared_bytes) return failure([brokenFile(name, title, "its texts are too many to be held")]);
  const targets = new Map(
    (linked.ok ? [...elementsOf(linked.value, "Relationship")] : []).map((each) => [
      attributeOf(each, "Id"),
      attributeOf(each, "Target") ?? "",
    ]),
  );
  const sheets = (book.ok ? [...elementsOf(book.value, "sheet")] : []).flatMap((sheet) => {
    const id = sheet.attributes.find(([each]) => /:id$/i.test(each))?.[1] ?? null;
    const target = targets.get(id)?.replace(/^\/?(?:xl\/)?/i, "");
    const bytes = target === undefined ? undefined : part(`xl/${target}`);
    return bytes === undefined ? [] : [{ name: attributeOf(sheet, "name") ?? "", bytes }];
  });
  if (sheets.length === 0) return failure([brokenFile(name, title, "it has no sheets")]);
  return success({
    sheets,
    shared: sharedTexts(shared),
    dateStyles: styles.ok ? dateStylesOf(styles.value) : new Set<number>(),
    isFrom1904: book.ok && isFrom1904(book.value),
  });
}

function tree(bytes: Uint8Array | null, name: string, title: string): Outcome<XmlElement> {
  return xmlTree(bytes === null ? "<styleSheet/>" : new TextDecoder().decode(bytes), name, title);
}

function isFrom1904(book: XmlElement): boolean {
  for (const each of elementsOf(book, "workbookPr")) return /^(?:1|true)$/.test(attributeOf(each, "date1904") ?? "");
  return false;
}

const items = elementsIn("si");

function sharedTexts(bytes: Uint8Array): readonly string[] {
  const text = new TextDecoder().decode(bytes);
  return Array.from(items(text), ({ inside }) => textsIn(inside));
}

/** Formats 14 to 22 and 45 to 47 of the standard, and own ones with a day, month, year, hour or second in them. */
function dateStylesOf(styles: XmlElement): ReadonlySet<number> {
  const own = new Map(
    [...elementsOf(styles, "numFmt")].map((each) => [
      Number(attributeOf(each, "numFmtId")),
      (attributeOf(each, "formatCode") ?? "").replace(/"[^"]*"|\\.|\[[^\]]*\]/g, ""),
    ]),
  );
  const isDate = (format: number) => {
    const code = own.get(format);
    if (code !== undefined) return /[dmyhs]/i.test(code) && !/general/i.test(code);
    return (format >= 14 && format <= 22) || (format >= 45 && format <= 47);
  };
  const dates = new Set<number>();
  for (const formats of elementsOf(styles, "cellXfs")) {
    for (const [i, each] of formats.children.entries()) {
      if (isDate(Number(attributeOf(each, "numFmtId") ?? 0))) dates.add(i);
    }
  }
  return dates;
}
