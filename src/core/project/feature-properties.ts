import * as z from "zod/mini";
import { label, quantity, section, words } from "./schema-parts.ts";

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
export const edgeProperties = section({ setback: quantity("length", 0, 500) });
export const keepOutProperties = section({
  distance: quantity("length", 0, 500),
  wiresPass: truth,
  largestGap: quantity("length", 0, 100),
});
export const alleyProperties = section({ width: quantity("length", 0, 100) });
export const blockProperties = section({ block: label });
export const rowProperties = section({ block: label, row: label, tapedLength: quantity("length", 0.1, 5000) });
