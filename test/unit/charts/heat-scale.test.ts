import { describe, expect, it } from 'vitest';
import { heatDomain_K, heatScale, labOf, nightHeat, paperHeat } from '../../../web/display/heat-scale.ts';

/** Björn Ottosson's published example: red of sRGB. */
const redLab = [0.6279, 0.2249, 0.1258];

const lightness = (css: string): number => {
  const hex = (css.match(/\d+/g) ?? []).map((byte) => Number(byte).toString(16).padStart(2, '0')).join('');
  return labOf(`#${hex}`)[0];
};

const falls = (values: number[]): boolean =>
  values.every((value, i) => i === 0 || value < (values[i - 1] ?? 0));

/** Machado, Oliveira and Fernandes (2009), severity 1, on linear light; from memory. */
const deficiencies = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

const light = (byte: number): number => {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};

/** Relative luminance as somebody with this deficiency sees it. */
function seen(css: string, matrix: number[]): number {
  const rgb = (css.match(/\d+/g) ?? []).map((byte) => light(Number(byte)));
  const row = (k: number): number => rgb.reduce((sum, c, i) => sum + c * (matrix[k * 3 + i] ?? 0), 0);
  return 0.2126 * row(0) + 0.7152 * row(1) + 0.0722 * row(2);
}

describe('the heat scale', () => {
  it('converts to OKLab as published', () => {
    labOf('#ff0000').forEach((value, i) => {
      expect(value).toBeCloseTo(redLab[i] ?? 0, 3);
    });
  });

  it('passes through its stops', () => {
    const scale = heatScale(paperHeat);
    expect(scale.colourAt(0)).toBe('rgb(220, 227, 225)');
    expect(scale.colourAt(0.5)).toBe('rgb(199, 115, 49)');
    expect(scale.colourAt(1)).toBe('rgb(67, 18, 15)');
  });

  const steps = Array.from({ length: 61 }, (_, i) => i / 60);

  it('gets darker with heat on paper and lighter at night, strictly', () => {
    expect(falls(steps.map((share) => lightness(heatScale(paperHeat).colourAt(share))))).toBe(true);
    expect(falls(steps.map((share) => -lightness(heatScale(nightHeat).colourAt(share))))).toBe(true);
  });

  it.each(Object.entries(deficiencies))('keeps that order for %s vision', (_, matrix) => {
    expect(falls(steps.map((share) => seen(heatScale(paperHeat).colourAt(share), matrix)))).toBe(true);
    expect(falls(steps.map((share) => -seen(heatScale(nightHeat).colourAt(share), matrix)))).toBe(true);
  });

  it('holds its ends beyond a fixed domain', () => {
    const scale = heatScale(paperHeat);
    expect(scale.colour(heatDomain_K[0] - 200)).toBe(scale.colourAt(0));
    expect(scale.colour(heatDomain_K[1] + 200)).toBe(scale.colourAt(1));
  });
});
