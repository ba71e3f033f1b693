/** The parts of the package that need no clock: its declared entrance takes a `Date`, the model itself only coefficients. */
declare module "geomagnetism/lib/model.js" {
  interface Coefficients {
    readonly epoch: number;
    readonly n_max: number;
    readonly n_max_sec_var: number;
    readonly main_field_coeff_g: readonly number[];
    readonly main_field_coeff_h: readonly number[];
    readonly secular_var_coeff_g: readonly number[];
    readonly secular_var_coeff_h: readonly number[];
  }
  class Model {
    constructor(coefficients: Coefficients);
    point(latLonHeight: readonly [lat_deg: number, lon_deg: number, height_km: number]): {
      readonly x: number;
      readonly y: number;
      readonly z: number;
      readonly decl: number;
      readonly incl: number;
    };
  }
  export = Model;
}
