import type { Shade } from "../../core/ground/shade.ts";
import { channels, colours } from "../../plugin/colours.ts";

/** What level ground has of the light that stands half way up (see `shade`). */
const level_ratio = Math.SQRT1_2;
/** So much of ink lies on the darkest ground, and of white on the lightest. */
const darkest_ratio = 0.34;
const lightest_ratio = 0.55;
/** Gentle ground is shaded as if it were this many times as steep, at the most; else it would look flat. */
const mostStrength = 6;

/**
 * Red, green, blue and opacity of every cell, row by row from the north-west: ink where the ground turns from the light, white where it
 * turns to it, nothing on level ground and where heights are not known.
 */
export function shadingPixels({ light }: Shade): Uint8ClampedArray<ArrayBuffer> {
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
    pixels[4 * i + 3] = 255 * Math.min(1, Math.abs(turned)) * (isDark ? darkest_ratio : lightest_ratio);
  }
  return pixels;
}

/** What takes nearly all of the ground to the darkest and lightest at most, however gentle it is. */
function strengthOf(light: Float32Array): number {
  const turned = light.filter((each) => !Number.isNaN(each)).map((each) => Math.abs(each / 255 - level_ratio));
  turned.sort();
  const most = turned[Math.floor(0.98 * turned.length)] ?? 0;
  return most === 0 ? 1 : Math.min(mostStrength, 1 / most);
}
