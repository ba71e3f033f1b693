import type { Shade } from "../../core/ground/shade.ts";
import { channels, colours } from "../../plugin/colours.ts";

/** What level ground has of the light that stands half way up (see `shade`). */
const level_ratio = Math.SQRT1_2;
/** So much of ink lies on the darkest ground, and of white on the lightest. */
const darkest_ratio = 0.4;
const lightest_ratio = 0.55;
/** Gentle ground is shaded as if it were this many times as steep, at the most; else it would look flat. */
const mostStrength = 10;
/** The outermost cells fade out, as a share of all: the picture has no edge. */
const fading_ratio = 0.08;

/**
 * Red, green, blue and opacity of every cell, row by row from the north-west: ink where the ground turns from the light, white where it
 * turns to it, nothing on level ground and where heights are not known.
 */
export function shadingPixels({ columns, rows, light }: Shade): Uint8ClampedArray<ArrayBuffer> {
  const [red, green, blue] = channels(colours.ink).map((channel) => Math.round(255 * channel));
  const pixels = new Uint8ClampedArray(4 * light.length);
  const strength = strengthOf(light);
  for (let i = 0; i < light.length; i++) {
    const turned = strength * (Number(light[i]) / 255 - level_ratio);
    if (Number.isNaN(turned)) continue;
    const isDark = turned < 0;
    pixels[4 * i] = isDark ? Number(red) : 255;
    pixels[4 * i + 1] = isDark ? Number(green) : 255;
    pixels[4 * i + 2] = isDark ? Number(blue) : 255;
    const inside = Math.min(1, fading(i % columns, columns), fading(Math.floor(i / columns), rows));
    pixels[4 * i + 3] = 255 * inside * Math.min(1, Math.abs(turned)) * (isDark ? darkest_ratio : lightest_ratio);
  }
  return pixels;
}

/** 0 at both ends, 1 and more from the end of the fading on. */
function fading(cell: number, cells: number): number {
  return Math.min(cell, cells - 1 - cell) / Math.max(1, fading_ratio * cells);
}

/** What takes nearly all of the ground to the darkest and lightest at most, however gentle it is. */
function strengthOf(light: Float32Array): number {
  const turned = light.filter((each) => !Number.isNaN(each)).map((each) => Math.abs(each / 255 - level_ratio));
  turned.sort();
  const most = turned[Math.floor(0.98 * turned.length)] ?? 0;
  return most === 0 ? 1 : Math.min(mostStrength, 1 / most);
}
