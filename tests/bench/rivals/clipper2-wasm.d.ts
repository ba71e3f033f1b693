declare module "clipper2-wasm/dist/umd/clipper2z.js" {
  import type { MainModule } from "clipper2-wasm/dist/clipper2z";

  const createClipper: () => Promise<MainModule>;
  export = createClipper;
}
