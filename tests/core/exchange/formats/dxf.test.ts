import { describe, expect, test } from "vitest";
import { codePageBytes } from "../../../../src/core/exchange/formats/dxf/code-page.ts";
import { dxfPieces, dxfString, dxfText } from "../../../../src/core/exchange/formats/dxf/dxf-text.ts";
import { layerKinds } from "../../../../src/core/exchange/layers/layer.ts";
import { createPlanner } from "../../../../src/core/planner.ts";
import { at, createProject } from "../../../support/create-project.ts";
import { bytesOf, handedOver, textsOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";
import { readSample } from "../../../support/sample-plans.ts";
import { survived } from "../../../support/survived.ts";

/* The formats' bar: 2 mm. Heights are metres. */
const most_m = 0.002;

const brook = createPlanner().plan(readSample("brook-and-two-blocks"));
const strip = createPlanner().plan(readSample("crooked-strip"));
const light = layerKinds.filter((kind) => kind !== "vines" && kind !== "stakes");

const only = (texts: Readonly<Record<string, string>>) => {
  const [entry] = Object.entries(texts);
  if (entry === undefined) throw new Error("nothing was written");
  return { name: entry[0], text: entry[1] };
};

describe("what a drawing says about itself", () => {
  test.each([
    ["m", "6", "rows-m.dxf"],
    ["ft", "2", "rows-ft.dxf"],
    ["us-ft", "21", "rows-us-ft.dxf"],
  ] as const)("its unit, %s, stands in its name, its header and its text", (unit, code, fileName) => {
    const { name, text } = only(textsOf(handedOver(brook, { as: "dxf", of: ["rows"], unit })));
    expect(name).toBe(fileName);
    expect(text).toContain(`9\n$INSUNITS\n70\n${code}\n`);
    expect(text).toContain(unit === "m" ? "in metres" : unit === "ft" ? "international feet" : "US survey feet");
  });

  test("several kinds are one file, with a layer a kind and one more for its names", () => {
    const { name, text } = only(textsOf(handedOver(brook, { as: "dxf", of: ["rows", "marks"] })));
    expect(name).toBe("plan-m.dxf");
    for (const layer of ["ROWS", "ROWS_NAMES", "ABOUT"]) expect(text).toContain(`0\nLAYER\n2\n${layer}\n`);
  });

  test("the origin of the local plane stands in the drawing", () => {
    const { text } = only(textsOf(handedOver(brook, { as: "dxf", of: ["rows"] })));
    const origin = brook.ground?.frame.origin;
    expect(text).toContain(`longitude ${origin?.[0]}, latitude ${origin?.[1]}`);
  });

  test("the extent in the header is that of what is drawn", () => {
    const { text } = only(textsOf(handedOver(brook, { as: "dxf", of: ["posts"] })));
    const [, west, south] = /\$EXTMIN\n10\n(\S+)\n20\n(\S+)/.exec(text) ?? [];
    const drawn = [...text.matchAll(/0\nPOINT\n8\nPOSTS\n10\n(\S+)\n20\n(\S+)\n/g)];
    expect(Number(west)).toBe(Math.min(...drawn.map(([, x]) => Number(x))));
    expect(Number(south)).toBe(Math.min(...drawn.map(([, , y]) => Number(y))));
  });
});

describe("letters", () => {
  // DXF reference: a letter outside the code page is written \U+ and its number.
  test("of the code page they stand as they are, others are written by their number", () => {
    expect(dxfString("Südhang – ñ Ł 🍇")).toBe("Südhang \\U+2013 ñ \\U+0141 \\U+D83C\\U+DF47");
    expect([...codePageBytes("Añ")]).toEqual([0x41, 0xf1]);
  });

  test("a line end in a name begins no group", () => {
    expect(dxfString("oak\n0\nEOF\r\n")).toBe("oak 0 EOF ");
  });

  test("signs that TEXT would read as its own marks are doubled", () => {
    expect(dxfText("5%%d^J")).toBe("5%%%%%%d^ J");
  });

  test("a long text is cut into pieces between letters", () => {
    const pieces = dxfPieces("Ł".repeat(100));
    expect(pieces.join("")).toBe("\\U+0141".repeat(100));
    for (const piece of pieces) expect(piece).toMatch(/^(\\U\+0141)+$/);
  });
});

describe("read back by our own reader", () => {
  test.each([
    ["local metres", { unit: "m" }],
    ["local feet", { unit: "ft" }],
    ["local US survey feet", { unit: "us-ft" }],
    ["UTM zone 55 south", { system: "EPSG:32755" }],
  ] as const)("in %s everything comes back in its place, with its name and its columns", async (_, choice) => {
    const handed = handedOver(brook, { as: "dxf", of: light, ...choice });
    const back = await survived(handed, true);
    expect(back.lost).toEqual([]);
    expect(back.changedValues).toEqual([]);
    expect(back.back).toBe(back.handed);
    expect(back.worst_m).toBeLessThan(most_m);
    expect(back.worstHeight_m).toBeLessThan(most_m);
  });

  test("heights come back where they are known, and none where they are not", async () => {
    const handed = handedOver(strip, { as: "dxf", of: ["rows", "posts", "parcels"], unit: "ft" });
    const back = await survived(handed, true);
    expect(back.lost).toEqual([]);
    expect(back.worstHeight_m).toBeLessThan(most_m);
  });

  test("a name with every mark comes back as it was", async () => {
    const name = "Eiche „ñ“ – 100%%d ^J <b>&amp;\\U+0041 🍇";
    const plan = createPlanner().plan(createProject({ marks: [{ key: "m", name, at: at([10, 10]) }] }));
    const back = await survived(handedOver(plan, { as: "dxf", of: ["marks"] }), true);
    expect(back).toMatchObject({ handed: 1, back: 1, lost: [], changedValues: [] });
  });
});

describe.skipIf(!has("ezdxf"))("read by ezdxf", () => {
  const script = `
import sys, ezdxf, collections, json
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
space = doc.modelspace()
print(json.dumps({
  "errors": len(audit.errors), "fixes": len(audit.fixes), "version": doc.dxfversion, "units": doc.header["$INSUNITS"],
  "counts": collections.Counter(e.dxf.layer for e in space),
  "names": [e.dxf.text for e in space.query('TEXT[layer=="ROWS_NAMES"]')],
  "closed": all(e.is_closed for e in space.query('POLYLINE[layer=="PARCELS"]')),
  "ends": [[list(v.dxf.location) for v in e.vertices] for e in space.query('POLYLINE[layer=="ROWS"]')],
}))`;
  test("there is nothing to mend, and as much of each kind as was handed over", () => {
    const handed = handedOver(brook, { as: "dxf", of: layerKinds });
    const told = inFolder({ "plan.dxf": bytesOf(handed)["plan-m.dxf"] ?? "" }, (folder) =>
      JSON.parse(said("/usr/bin/python3", ["-c", script, `${folder}/plan.dxf`])),
    );
    expect(told).toMatchObject({ errors: 0, fixes: 0, version: "AC1009", units: 6, closed: true });
    for (const { kind, count } of handed.layers) {
      expect(told.counts[kind.toUpperCase()] ?? 0, kind).toBe(count);
      expect(told.counts[`${kind.toUpperCase()}_NAMES`] ?? 0, kind).toBe(count);
    }
    const rows = handed.layers.find(({ kind }) => kind === "rows");
    expect(told.names).toEqual(Array.from(rows?.features() ?? [], (row) => handed.names.of(row)));
  });

  test("letters of western languages come out as they are", () => {
    const name = "Südhang ñ & <b>";
    const plan = createPlanner().plan(createProject({ marks: [{ key: "m", name, at: at([10, 10]) }] }));
    const [drawn = new Uint8Array()] = Object.values(bytesOf(handedOver(plan, { as: "dxf", of: ["marks"] })));
    const ask =
      "import sys, ezdxf\nprint([e.dxf.text for e in ezdxf.readfile(sys.argv[1]).query('TEXT[layer==\"MARKS_NAMES\"]')][0])";
    inFolder({ "marks.dxf": drawn }, (folder) => {
      expect(said("/usr/bin/python3", ["-c", ask, `${folder}/marks.dxf`]).trim()).toBe(name);
      if (!has("ogrinfo")) return;
      const told = said("ogrinfo", ["-ro", "-q", `${folder}/marks.dxf`, "entities", "-where", "Layer='MARKS_NAMES'"]);
      expect(told).toContain(`Text (String) = ${name}`);
    });
  });
});

describe.skipIf(!has("ogrinfo"))("read by GDAL", () => {
  test("every layer has as many entities, and rows end where they should", () => {
    const handed = handedOver(brook, { as: "dxf", of: light });
    const files = { "plan.dxf": bytesOf(handed)["plan-m.dxf"] ?? "" };
    const told = inFolder(files, (folder) => said("ogr2ogr", ["-f", "GeoJSON", "/vsistdout/", `${folder}/plan.dxf`]));
    const { features } = JSON.parse(told);
    for (const { kind, count } of handed.layers) {
      const drawn = features.filter(
        ({ properties }: { properties: { Layer: string } }) => properties.Layer === kind.toUpperCase(),
      );
      expect(drawn.length, kind).toBe(count);
    }
    const [x, y] = features.find(({ properties }: { properties: { Layer: string } }) => properties.Layer === "ROWS")
      .geometry.coordinates[0];
    const start = brook.rows?.rows[0]?.start ?? [0, 0];
    expect(Math.hypot(x - start[0], y - start[1])).toBeLessThan(most_m);
  });
});
