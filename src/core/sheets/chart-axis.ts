import { formatQuantity, inUnit, type QuantityKind, type UnitSystem } from "../units.ts";

/** One side of a chart: where its round numbers are, in the reader's unit. */
export interface ChartAxis {
  /** Of what the axis spans, SI, round in the reader's unit. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly ChartTick[];
  /** "gal/min" */
  readonly unit: string;
}

export interface ChartTick {
  readonly value: number;
  /** The bare number; the unit stands once at the axis. */
  readonly text: string;
}

/** An axis from `least` to `most`, SI, on round numbers of the unit that `most` is written in; at most so many steps. */
export function chartAxis(
  kind: QuantityKind,
  least: number,
  most: number,
  units: UnitSystem,
  steps: number,
): ChartAxis {
  const widest = Math.max(Math.abs(least), Math.abs(most), 1e-9);
  const unit = formatQuantity(kind, widest, units).replace(/^[\d,.\s-]+/, "");
  const perSi = inUnit(kind, 1, spelled(unit)) - inUnit(kind, 0, spelled(unit));
  const step = roundStep(((most - least) * perSi) / steps);
  const [first, last] = [Math.floor((least * perSi) / step + 1e-9), Math.ceil((most * perSi) / step - 1e-9)];
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return {
    from: (first * step) / perSi,
    to: (Math.max(last, first + 1) * step) / perSi,
    unit,
    ticks: Array.from({ length: Math.max(last, first + 1) - first + 1 }, (_, i) => {
      const value = (first + i) * step;
      return { value: value / perSi, text: value.toFixed(decimals) };
    }),
  };
}

/** 1, 2 or 5 times a power of ten, at least so much. */
function roundStep(least: number): number {
  if (!(least > 1e-12)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5].find((each) => each * power >= least * (1 - 1e-9)) ?? 10) * power;
}

function spelled(unit: string): string {
  return unit.replace("³", "3").replace("²", "2");
}
