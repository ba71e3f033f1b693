import { parseQuantity } from "../units.ts";

/** A standard pipe. */
export interface PipeSize {
  /** What settings call it. */
  readonly size: string;
  /** What one asks for. */
  readonly name: string;
  readonly outside_mm: number;
  /** Average inside diameter, for losses; makers differ, so it may be stated otherwise. */
  readonly inside_mm: number;
  /** How it is usually joined: solvent-welded up to 2 1/2 in or 75 mm, gasketed above, PE pipe by barbed or compression fittings. Common practice, no source. */
  readonly joint: "solvent" | "gasket" | "barbed";
  /** Length that is usually sold. Common practice, no source. */
  readonly stick_m: number;
}

function size(
  name: string,
  asked: string,
  outside_mm: number,
  inside_mm: number,
  joint: PipeSize["joint"],
  stick: string,
): PipeSize {
  const length = parseQuantity("length", stick);
  if (!length.ok) throw new Error(length.reason);
  return { size: name, name: asked, outside_mm, inside_mm, joint, stick_m: length.value };
}

/**
 * PVC by ASTM D1785 (Schedule 40) and D2241 (SDR 21 and 26), average inside diameters; metric PVC by DIN 8062, 10 and 6 bar; PE 100 SDR 17.
 * Diameters as in the calculation handbook, sections 5.1 to 5.3.
 */
export const pipeSizes: readonly PipeSize[] = [
  size("pvc-40-0.5in", "PVC Schedule 40, 1/2 in", 21.336, 15.4432, "solvent", "20 ft"),
  size("pvc-40-0.75in", "PVC Schedule 40, 3/4 in", 26.67, 20.574, "solvent", "20 ft"),
  size("pvc-40-1in", "PVC Schedule 40, 1 in", 33.401, 26.2382, "solvent", "20 ft"),
  size("pvc-40-1.25in", "PVC Schedule 40, 1 1/4 in", 42.164, 34.6456, "solvent", "20 ft"),
  size("pvc-40-1.5in", "PVC Schedule 40, 1 1/2 in", 48.26, 40.4368, "solvent", "20 ft"),
  size("pvc-40-2in", "PVC Schedule 40, 2 in", 60.325, 52.0446, "solvent", "20 ft"),
  size("pvc-40-2.5in", "PVC Schedule 40, 2 1/2 in", 73.025, 62.103, "solvent", "20 ft"),
  size("pvc-40-3in", "PVC Schedule 40, 3 in", 88.9, 77.2668, "solvent", "20 ft"),
  size("pvc-40-4in", "PVC Schedule 40, 4 in", 114.3, 101.5492, "solvent", "20 ft"),
  size("pvc-sdr21-0.75in", "PVC SDR 21 (Class 200), 3/4 in", 26.67, 23.0124, "solvent", "20 ft"),
  size("pvc-sdr21-1in", "PVC SDR 21 (Class 200), 1 in", 33.401, 29.6926, "solvent", "20 ft"),
  size("pvc-sdr21-1.25in", "PVC SDR 21 (Class 200), 1 1/4 in", 42.164, 37.6428, "solvent", "20 ft"),
  size("pvc-sdr21-1.5in", "PVC SDR 21 (Class 200), 1 1/2 in", 48.26, 43.18, "solvent", "20 ft"),
  size("pvc-sdr21-2in", "PVC SDR 21 (Class 200), 2 in", 60.325, 54.0766, "solvent", "20 ft"),
  size("pvc-sdr21-2.5in", "PVC SDR 21 (Class 200), 2 1/2 in", 73.025, 65.5574, "solvent", "20 ft"),
  size("pvc-sdr21-3in", "PVC SDR 21 (Class 200), 3 in", 88.9, 79.9084, "gasket", "20 ft"),
  size("pvc-sdr21-4in", "PVC SDR 21 (Class 200), 4 in", 114.3, 102.7684, "gasket", "20 ft"),
  size("pvc-sdr26-1in", "PVC SDR 26 (Class 160), 1 in", 33.401, 29.6926, "solvent", "20 ft"),
  size("pvc-sdr26-1.25in", "PVC SDR 26 (Class 160), 1 1/4 in", 42.164, 38.4048, "solvent", "20 ft"),
  size("pvc-sdr26-1.5in", "PVC SDR 26 (Class 160), 1 1/2 in", 48.26, 44.0436, "solvent", "20 ft"),
  size("pvc-sdr26-2in", "PVC SDR 26 (Class 160), 2 in", 60.325, 55.1942, "solvent", "20 ft"),
  size("pvc-sdr26-2.5in", "PVC SDR 26 (Class 160), 2 1/2 in", 73.025, 66.929, "solvent", "20 ft"),
  size("pvc-sdr26-3in", "PVC SDR 26 (Class 160), 3 in", 88.9, 81.534, "gasket", "20 ft"),
  size("pvc-sdr26-4in", "PVC SDR 26 (Class 160), 4 in", 114.3, 105.0036, "gasket", "20 ft"),
  size("pvc-pn10-32mm", "PVC 10 bar, 32 mm", 32, 28.4, "solvent", "6 m"),
  size("pvc-pn10-40mm", "PVC 10 bar, 40 mm", 40, 36.2, "solvent", "6 m"),
  size("pvc-pn10-50mm", "PVC 10 bar, 50 mm", 50, 45.2, "solvent", "6 m"),
  size("pvc-pn10-63mm", "PVC 10 bar, 63 mm", 63, 57.0, "solvent", "6 m"),
  size("pvc-pn10-75mm", "PVC 10 bar, 75 mm", 75, 67.8, "solvent", "6 m"),
  size("pvc-pn10-90mm", "PVC 10 bar, 90 mm", 90, 81.4, "gasket", "6 m"),
  size("pvc-pn10-110mm", "PVC 10 bar, 110 mm", 110, 99.4, "gasket", "6 m"),
  size("pvc-pn6-40mm", "PVC 6 bar, 40 mm", 40, 36.4, "solvent", "6 m"),
  size("pvc-pn6-50mm", "PVC 6 bar, 50 mm", 50, 46.4, "solvent", "6 m"),
  size("pvc-pn6-63mm", "PVC 6 bar, 63 mm", 63, 59.2, "solvent", "6 m"),
  size("pvc-pn6-75mm", "PVC 6 bar, 75 mm", 75, 70.6, "solvent", "6 m"),
  size("pvc-pn6-90mm", "PVC 6 bar, 90 mm", 90, 84.6, "gasket", "6 m"),
  size("pvc-pn6-110mm", "PVC 6 bar, 110 mm", 110, 103.6, "gasket", "6 m"),
  size("pe100-sdr17-32mm", "PE 100 SDR 17 (10 bar), 32 mm", 32, 28.0, "barbed", "100 m"),
  size("pe100-sdr17-40mm", "PE 100 SDR 17 (10 bar), 40 mm", 40, 35.2, "barbed", "100 m"),
  size("pe100-sdr17-50mm", "PE 100 SDR 17 (10 bar), 50 mm", 50, 44.0, "barbed", "100 m"),
  size("pe100-sdr17-63mm", "PE 100 SDR 17 (10 bar), 63 mm", 63, 55.4, "barbed", "100 m"),
  size("pe100-sdr17-75mm", "PE 100 SDR 17 (10 bar), 75 mm", 75, 66.0, "barbed", "100 m"),
  size("pe100-sdr17-90mm", "PE 100 SDR 17 (10 bar), 90 mm", 90, 79.2, "barbed", "100 m"),
  size("pe100-sdr17-110mm", "PE 100 SDR 17 (10 bar), 110 mm", 110, 96.8, "barbed", "100 m"),
];
