import { xmlText } from "../../xml.ts";

/*
 * The parts of a workbook that are the same whatever is in its sheets. Source: ECMA-376 part 1 (SpreadsheetML, sections 18.2, 18.8) and part 2
 * (Open Packaging Conventions); from memory, and held against two independent readers by tests.
 */
const xml = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relationships = "http://schemas.openxmlformats.org/package/2006/relationships";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const contents = "http://schemas.openxmlformats.org/package/2006/content-types";
const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** Path of the sheet of a number, from 1. */
export function sheetPath(number: number): string {
  return `xl/worksheets/sheet${number}.xml`;
}

/** Every part but the sheets, by its path. */
export function workbookParts(sheets: readonly string[]): readonly (readonly [path: string, text: string])[] {
  return [
    ["[Content_Types].xml", contentTypes(sheets.length)],
    [
      "_rels/.rels",
      `${xml}<Relationships xmlns="${relationships}"><Relationship Id="rId1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ],
    [
      "xl/workbook.xml",
      `${xml}<workbook xmlns="${main}" xmlns:r="${office}"><sheets>${sheets
        .map((name, i) => `<sheet name="${xmlText(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
        .join("")}</sheets></workbook>`,
    ],
    [
      "xl/_rels/workbook.xml.rels",
      `${xml}<Relationships xmlns="${relationships}">${sheets
        .map(
          (_, i) => `<Relationship Id="rId${i + 1}" Type="${office}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
        )
        .join(
          "",
        )}<Relationship Id="rId${sheets.length + 1}" Type="${office}/styles" Target="styles.xml"/></Relationships>`,
    ],
    ["xl/styles.xml", styles()],
  ];
}

function contentTypes(sheets: number): string {
  const overrides = Array.from(
    { length: sheets },
    (_, i) => `<Override PartName="/${sheetPath(i + 1)}" ContentType="${spreadsheet}.worksheet+xml"/>`,
  );
  return `${xml}<Types xmlns="${contents}"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${spreadsheet}.sheet.main+xml"/>${overrides.join("")}<Override PartName="/xl/styles.xml" ContentType="${spreadsheet}.styles+xml"/></Types>`;
}

/** Numbers of cell styles. */
export const headStyle = 1;
/** Text stays text when someone edits the cell, whatever it begins with. */
export const textStyle = 2;
const firstNumberStyle = 3;
/** Places have most: 8 of a degree. */
const mostDecimals = 8;
/** Number formats up to 163 are those of the standard. */
const firstOwnFormat = 164;

/** The style of numbers with so many decimals. */
export function numberStyle(decimals: number): number {
  return firstNumberStyle + Math.min(decimals, mostDecimals);
}

function styles(): string {
  const decimals = Array.from({ length: mostDecimals + 1 }, (_, i) => i);
  const formats = decimals.map(
    (each) => `<numFmt numFmtId="${firstOwnFormat + each}" formatCode="0${each > 0 ? "." : ""}${"0".repeat(each)}"/>`,
  );
  const numbers = decimals.map(
    (each) =>
      `<xf numFmtId="${firstOwnFormat + each}" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>`,
  );
  return `${xml}<styleSheet xmlns="${main}"><numFmts count="${formats.length}">${formats.join("")}</numFmts><fonts count="2"><font><sz val="11"/><name val="Arial"/></font><font><b/><sz val="11"/><name val="Arial"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="${3 + numbers.length}"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="49" fontId="1" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1"/><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>${numbers.join("")}</cellXfs></styleSheet>`;
}
