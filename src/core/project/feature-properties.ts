import * as z from "zod/mini";
import { heightGrid, highest_m, lowest_m } from "./height-grid.ts";
import { crossings, type Role } from "./project.ts";
import { label, quantity, type Section, section, words } from "./schema-parts.ts";

/*
 * The properties of a feature that this program reads, role by role. Others may stand beside them and are nobody's business.
 * Limits: common sense, no source.
 */

/** True or false, also as text: some programs write properties as text. */
const truth = z.pipe(
  z.union([z.boolean(), z.enum(["true", "false"])], "it must be true or false"),
  z.transform<boolean | "true" | "false", boolean>((value) => value === true || value === "true"),
);

export const parcelProperties = section({
  setback: quantity("length", 0, 500),
  outline: words("surveyed", "drawn", "walked"),
});
export const edgeProperties = section({
  setback: quantity("length", 0, 500),
  tapedLength: quantity("length", 0.1, 5000),
});
export const keepOutProperties = section({
  distance: quantity("length", 0, 500),
  wiresPass: truth,
  largestGap: quantity("length", 0, 100),
  trenchDistance: quantity("length", 0, 500),
  crossing: words(...crossings),
});
export const alleyProperties = section({ width: quantity("length", 0, 100) });
export const blockProperties = section({ block: label });
export const rowProperties = section({ block: label, row: label, tapedLength: quantity("length", 0.1, 5000) });
export const elevationProperties = section({ height: quantity("length", lowest_m, highest_m), grid: heightGrid });
const none = section({});

/** What of a feature's properties is read, by its role. */
export const featureSections: Readonly<Record<Role, Section<unknown>>> = {
  parcel: parcelProperties,
  block: blockProperties,
  edge: edgeProperties,
  obstacle: keepOutProperties,
  "no-plant": keepOutProperties,
  "cross-alley": alleyProperties,
  row: rowProperties,
  "keep-row": none,
  mark: none,
  source: none,
  "main-line": none,
  elevation: elevationProperties,
};
