/** The package is CommonJS: its members come as the default export, which its own types do not say. */
declare module "geographiclib-geodesic/geographiclib-geodesic.js" {
  import type * as geographiclib from "geographiclib-geodesic";

  const members: typeof geographiclib;
  export = members;
}
