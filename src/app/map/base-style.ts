import font from "@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-400-normal.woff2?url";
import type { StyleSpecification } from "maplibre-gl";
import { colours } from "../../plugin/colours.ts";

/** Name under which the map knows the bundled font. */
export const mapFont = "Map Regular";

/** Plain paper: no tiles, no glyph server, nothing that asks the network. */
export function baseStyle(page: string): StyleSpecification {
  return {
    version: 8,
    "font-faces": {
      [mapFont]: [{ url: new URL(font, page).href, "unicode-range": ["U+0000-00FF", "U+2000-206F"] }],
    },
    sources: {},
    layers: [{ id: "paper", type: "background", paint: { "background-color": colours.paper } }],
  };
}
