declare module "sql.js/dist/sql-wasm-inline.js" {
  import load from "sql.js";

  // biome-ignore lint/style/noDefaultExport: it is the package's own
  export default load;
}
