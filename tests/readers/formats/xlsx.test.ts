import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readFile } from "../../../src/readers/read-file.ts";
import { noAnswers } from "../../../src/readers/reading.ts";
import { fileOf, found, saidOf } from "../../support/survived.ts";
import { zipOf } from "../hostile-zip.ts";
import { givenFeatures, valueIn } from "./map-files.ts";

const folder = "tests/fixtures/exchange/tables";
const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';

/** A workbook of one sheet, made by hand. */
function workbook(sheet: string, parts: Readonly<Record<string, string>> = {}): Uint8Array {
  return zipOf({
    "xl/workbook.xml": `<workbook ${main} xmlns:r="r"><sheets><sheet name="points" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml": `<worksheet ${main}><sheetData>${sheet}</sheetData></worksheet>`,
    ...parts,
  });
}

const text = (value: string) => `<c t="inlineStr"><is><t>${value}</t></is></c>`;
const number = (value: number | string, style = "") => `<c${style}><v>${value}</v></c>`;
const row = (...cells: readonly string[]) => `<row>${cells.join("")}</row>`;
const heads = row(text("name"), text("longitude"), text("latitude"), text("remark"));

const read = (bytes: Uint8Array, answers = {}) => found("points.xlsx", bytes, answers);
const said = (bytes: Uint8Array) => saidOf("points.xlsx", bytes);

describe("files that GDAL and gnumeric wrote from the same features", () => {
  test.each(["gdal-points.xlsx", "gnumeric-points.xlsx"])("%s: names, places and values", async (name) => {
    const { features, format } = await read(new Uint8Array(readFileSync(`${folder}/${name}`)));
    const given = givenFeatures("Point");
    expect(format).toBe("XLSX workbook");
    expect(features.map((each) => each.name)).toEqual(given.map((each) => each.name));
    for (const [i, { geometry }] of given.entries()) {
      const back = features[i]?.geometry;
      if (geometry.type !== "Point" || back?.type !== "Point") throw new Error("lost");
      expect(back.coordinates.slice(0, 2)).toEqual(geometry.coordinates.slice(0, 2));
      expect(valueIn(features[i], "role")).toBe("mark");
    }
  });

  test("a workbook is known by its beginning, whatever it is called", async () => {
    const bytes = new Uint8Array(readFileSync(`${folder}/gnumeric-points.xlsx`));
    expect((await found("points.dat", bytes)).format).toBe("XLSX workbook");
  });
});

describe("cells", () => {
  test("text is no number, a number no text, an empty cell nothing; places in the sheet say their columns", async () => {
    const { features } = await read(
      workbook(
        heads + row(text("007"), number(-122.7), number(38.29), text("12")) + row('<c r="D3" t="b"><v>1</v></c>'),
      ),
    );
    expect(features).toEqual([
      {
        name: "007",
        layer: "points",
        geometry: { type: "Point", coordinates: [-122.7, 38.29] },
        values: [["remark", "12"]],
      },
    ]);
  });

  test("of a formula what it came to is read, never the formula", async () => {
    const { features } = await read(
      workbook(
        heads +
          row(text("a"), "<c><f>-122-0.7</f><v>-122.7</v></c>", number(38.29), '<c t="str"><f>"x"</f><v>x</v></c>'),
      ),
    );
    expect(features[0]?.geometry).toEqual({ type: "Point", coordinates: [-122.7, 38.29] });
    expect(features[0]?.values).toEqual([["remark", "x"]]);
  });

  test("shared texts in pieces, without how they are said, and _x0041_ for a letter (ECMA-376 part 1, 22.9.2.19)", async () => {
    const shared = `<sst ${main}><si><r><t>Vi</t></r><r><t>ña</t></r><rPh sb="0" eb="1"><t>spoken</t></rPh></si><si><t>_x0041_ &lt;b&gt;</t></si></sst>`;
    const { features } = await read(
      workbook(heads + row('<c t="s"><v>0</v></c>', number(-122.7), number(38.29), '<c t="s"><v>1</v></c>'), {
        "xl/sharedStrings.xml": shared,
      }),
    );
    expect(features[0]?.name).toBe("Viña");
    expect(features[0]?.values).toEqual([["remark", "A <b>"]]);
  });

  test("numbers in the style of a date are dates: day 45000 is 15 March 2023 (ECMA-376 part 1, 18.17.4)", async () => {
    const styles = `<styleSheet ${main}><numFmts><numFmt numFmtId="165" formatCode="dd/mm/yyyy"/><numFmt numFmtId="166" formatCode="0.0&quot;days&quot;"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="165"/><xf numFmtId="166"/></cellXfs></styleSheet>`;
    const line = (style: number) => row(text("a"), number(-122.7), number(38.29), number("45000", ` s="${style}"`));
    const { features } = await read(workbook(heads + [0, 1, 2, 3].map(line).join(""), { "xl/styles.xml": styles }));
    expect(features.map((each) => valueIn(each, "remark"))).toEqual([45000, "2023-03-15", "2023-03-15", 45000]);
  });

  test("cells of other prefixes and with their columns said are found in their columns", async () => {
    const prefixed = workbook("", {
      "xl/worksheets/sheet1.xml": `<x:worksheet xmlns:x="m"><x:sheetData><x:row r="1"><x:c r="C1" t="inlineStr"><x:is><x:t>lat</x:t></x:is></x:c><x:c r="A1" t="inlineStr"><x:is><x:t>lon</x:t></x:is></x:c></x:row><x:row r="2"><x:c r="A2"><x:v>-122.7</x:v></x:c><x:c r="C2"><x:v>38.29</x:v></x:c></x:row></x:sheetData></x:worksheet>`,
    });
    expect((await read(prefixed)).features[0]?.geometry).toEqual({ type: "Point", coordinates: [-122.7, 38.29] });
  });

  test("sheets without places are named", async () => {
    const two = workbook(heads + row(text("a"), number(-122.7), number(38.29)), {
      "xl/workbook.xml": `<workbook ${main} xmlns:r="r"><sheets><sheet name="points" r:id="rId1"/><sheet name="prices" r:id="rId2"/></sheets></workbook>`,
      "xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Target="/xl/worksheets/sheet1.xml"/><Relationship Id="rId2" Target="worksheets/sheet2.xml"/></Relationships>`,
      "xl/worksheets/sheet2.xml": `<worksheet ${main}><sheetData>${row(text("article"))}</sheetData></worksheet>`,
    });
    expect(await said(two)).toEqual(["readers/sheets-without-place"]);
  });
});

describe("hostile and broken files", () => {
  const sound = heads + row(text("a"), number(-122.7), number(38.29));

  test("HTML, formulas and names of the language are text like any other", async () => {
    const { features } = await read(
      workbook(
        row(text("name"), text("lon"), text("lat"), text("__proto__")) +
          row(text("=1+1&lt;img src=x&gt;"), number(-122.7), number(38.29), text("x")),
      ),
    );
    expect(features[0]?.name).toBe("=1+1<img src=x>");
    expect(features[0]?.values).toEqual([["__proto__", "x"]]);
  });

  test("entities of its own, remarks and unparsed text are refused in a sheet", async () => {
    for (const part of ['<!DOCTYPE x [<!ENTITY a "b">]>', "<!-- remark -->", "<![CDATA[x]]>"]) {
      const bytes = workbook(sound, {
        "xl/worksheets/sheet1.xml": `${part}<worksheet ${main}><sheetData>${sound}</sheetData></worksheet>`,
      });
      expect(await said(bytes), part).toEqual(["readers/broken-file"]);
    }
    const book = workbook(sound, {
      "xl/workbook.xml": '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]><workbook/>',
    });
    expect(await said(book)).toEqual(["readers/broken-file"]);
  });

  test("a file cut off anywhere is refused, and does no harm", async () => {
    const bytes = workbook(sound);
    for (let length = 0; length < bytes.length; length += 97) {
      const outcome = await readFile(fileOf("points.xlsx", bytes.slice(0, length)), noAnswers);
      expect(outcome.ok).toBe(false);
    }
    const cut = workbook(sound, { "xl/worksheets/sheet1.xml": `<worksheet ${main}><sheetData>${sound}<row><c` });
    expect(await said(cut)).toEqual(["readers/broken-file"]);
  });

  test("cells that are never closed take no time", async () => {
    const bytes = workbook(sound, {
      "xl/worksheets/sheet1.xml": `<worksheet ${main}><sheetData><row>${"<c><v>".repeat(300_000)}</row></sheetData></worksheet>`,
    });
    const begun = performance.now();
    expect((await readFile(fileOf("points.xlsx", bytes), noAnswers)).ok).toBe(false);
    expect(performance.now() - begun).toBeLessThan(2000);
  });

  test("columns without end, endless lines, text that no cell holds", async () => {
    for (const inside of [
      row('<c r="ZZZ1"><v>1</v></c>'),
      `<row>${" ".repeat(5_000_000)}</row>`,
      heads + row(text("x".repeat(40_000)), number(1), number(2)),
    ]) {
      expect(await said(workbook(inside))).toEqual(["readers/broken-file"]);
    }
  });

  test("an archive that unpacks to more than is held is refused before it is unpacked", async () => {
    const bomb = workbook("", { "xl/worksheets/sheet1.xml": "<row></row>".repeat(15_000_000) });
    expect(bomb.length).toBeLessThan(1e6);
    expect(await said(bomb)).toEqual(["readers/archive-too-large"]);
  });

  test("an archive without a workbook in it, sheets that are not there, paths that lead out of it", async () => {
    expect(await said(zipOf({ "xl/other.xml": "<a/>" }))).toEqual(["readers/broken-file"]);
    const lost = {
      "xl/_rels/workbook.xml.rels":
        '<Relationships><Relationship Id="rId1" Target="../../etc/passwd"/></Relationships>',
    };
    expect(await said(workbook(sound, lost))).toEqual(["readers/broken-file"]);
  });
});
