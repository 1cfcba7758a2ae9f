import { kelvin } from './units.ts';

/** The one heat scale of the sheet: hotter is further from the paper. Stops as hex colours, cold to hot. */
export const paperHeat = ['#DCE3E1', '#CFC9A6', '#D9A651', '#C77331', '#A3431F', '#742317', '#43120F'];
export const nightHeat = ['#3A3F45', '#5B4A3C', '#8A4A2B', '#B8602C', '#DB8A3E', '#F0BC6A', '#FBE7B8'];

/** Fixed for the sheet, so that a colour means the same temperature on every drawing. */
export const heatDomain_K: readonly [low: number, high: number] = [kelvin(200), kelvin(800)];

export type Lab = [lightness: number, a: number, b: number];

const SHADES = 240;

export interface HeatScale {
  /** CSS colour of a temperature; ends of the domain beyond it. */
  colour(temperature_K: number): string;
  /** CSS colour at a share of the domain, 0 to 1. */
  colourAt(share: number): string;
}

/** A table of shades, so that drawing never mixes colours. */
export function heatScale(stops: readonly string[]): HeatScale {
  const shades = Array.from({ length: SHADES + 1 }, (_, i) => toCss(mixed(stops.map(labOf), i / SHADES)));
  const [low, high] = heatDomain_K;
  const colourAt = (share: number): string =>
    shades[Math.round(Math.min(1, Math.max(0, share)) * SHADES)] ?? '';
  return { colourAt, colour: (temperature_K) => colourAt((temperature_K - low) / (high - low)) };
}

function mixed(labs: Lab[], share: number): Lab {
  const place = share * (labs.length - 1);
  const index = Math.min(labs.length - 2, Math.floor(place));
  const from = labs[index] ?? [0, 0, 0];
  const to = labs[index + 1] ?? from;
  const part = place - index;
  return [
    from[0] + (to[0] - from[0]) * part,
    from[1] + (to[1] - from[1]) * part,
    from[2] + (to[2] - from[2]) * part,
  ];
}

/**
 * OKLab of a hex colour.
 * Source: Björn Ottosson, A perceptual color space for image processing (2020), matrices from memory, checked by a
 * round trip in the tests.
 */
export function labOf(hex: string): Lab {
  const bits = parseInt(hex.trim().slice(1), 16);
  const [r, g, b] = [bits >> 16, (bits >> 8) & 255, bits & 255].map((byte) => linear(byte / 255)) as Lab;
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

function toCss([L, a, b]: Lab): string {
  const l = (L + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (L - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (L - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const channels = [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
  return `rgb(${channels.map((channel) => Math.round(gamma(channel) * 255)).join(', ')})`;
}

const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);

function gamma(value: number): number {
  const c = Math.min(1, Math.max(0, value));
  return c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
}
