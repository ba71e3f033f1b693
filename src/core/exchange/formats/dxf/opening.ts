import type { HandOverJob } from "../../format.ts";
import type { Box } from "./box.ts";
import { codePageName } from "./code-page.ts";
import { applicationName } from "./feature-data.ts";
import { dxfNumber, group, groups } from "./group.ts";
import { layerLooks, layerName, namesLayerName } from "./layer-looks.ts";

/** Layer of the text that says what the numbers mean. */
export const aboutLayerName = "ABOUT";

/** Header and tables of a drawing, up to the first entity. */
export function opening({ layers, system }: HandOverJob, { least, most }: Box): string {
  const layerRecords = layers.flatMap(({ kind }) => {
    const { colour } = layerLooks[kind];
    return [layerRecord(layerName(kind), colour), layerRecord(namesLayerName(kind), colour)];
  });
  return [
    groups([0, "SECTION"], [2, "HEADER"], [9, "$ACADVER"], [1, "AC1009"], [9, "$DWGCODEPAGE"], [3, codePageName]),
    variable("$INSBASE", [0, 0, 0]),
    variable("$EXTMIN", least),
    variable("$EXTMAX", most),
    variable("$LIMMIN", [least[0], least[1]]),
    variable("$LIMMAX", [most[0], most[1]]),
    groups([9, "$LUNITS"], [70, 2], [9, "$LUPREC"], [70, 4]),
    // Points as a cross in a circle, 2 % of the screen: as they come they are dots that nobody sees.
    groups([9, "$PDMODE"], [70, 34], [9, "$PDSIZE"], [40, "-2.0"]),
    groups([9, "$INSUNITS"], [70, drawingUnits[system.unit]], [0, "ENDSEC"]),
    groups([0, "SECTION"], [2, "TABLES"]),
    table("LTYPE", [
      groups([0, "LTYPE"], [2, "CONTINUOUS"], [70, 0], [3, "Solid line"], [72, 65], [73, 0], [40, "0.0"]),
    ]),
    table("LAYER", [layerRecord("0", 7), layerRecord(aboutLayerName, 7), ...layerRecords]),
    table("STYLE", [
      groups(
        [0, "STYLE"],
        [2, "STANDARD"],
        [70, 0],
        [40, "0.0"],
        [41, "1.0"],
        [50, "0.0"],
        [71, 0],
        [42, "0.2"],
        [3, "txt"],
        [4, ""],
      ),
    ]),
    table("APPID", [applicationRecord("ACAD"), applicationRecord(applicationName)]),
    groups([0, "ENDSEC"], [0, "SECTION"], [2, "ENTITIES"]),
  ].join("");
}

/** `$INSUNITS`: 6 metres, 2 feet, 21 US survey feet, 0 not said. */
const drawingUnits: Readonly<Record<HandOverJob["system"]["unit"], number>> = { m: 6, ft: 2, "us-ft": 21, deg: 0 };

function variable(name: string, values: readonly number[]): string {
  return group(9, name) + values.map((value, axis) => group(10 * (axis + 1), dxfNumber(value))).join("");
}

function table(name: string, records: readonly string[]): string {
  return groups([0, "TABLE"], [2, name], [70, records.length]) + records.join("") + group(0, "ENDTAB");
}

function layerRecord(name: string, colour: number): string {
  return groups([0, "LAYER"], [2, name], [70, 0], [62, colour], [6, "CONTINUOUS"]);
}

function applicationRecord(name: string): string {
  return groups([0, "APPID"], [2, name], [70, 0]);
}
