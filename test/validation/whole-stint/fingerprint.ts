/** What the committed numbers were made with: enough of the equations and of the drive to tell when either has moved. */
import { compile, type CornerModel } from '../../../engine/stint/compile.ts';
import { stretchesOf } from './drive.ts';
import { equationsOf } from './equations.ts';
import type { ReferenceStint } from './stints.ts';

/** A number and where it comes from. */
export type Fingerprint = Record<string, number>;

/** Speeds at which the rates of a corner are taken [m/s], each with the brakes on and off. */
const SPEEDS_MPS = [0, 12, 31, 67];
const BRAKING_W = 2e5;

export function fingerprintOf(stints: readonly ReferenceStint[]): Fingerprint {
  const print: Fingerprint = {};
  for (const { name, scenario } of stints) {
    stretchesOf(scenario).forEach(({ duration_s, massRatio, spans }, i) => {
      const heat_J = spans.reduce((sum, { from_s, to_s, power_W }) => {
        return (
          sum + ((to_s - from_s) * (power_W(from_s) + 4 * power_W((from_s + to_s) / 2) + power_W(to_s))) / 6
        );
      }, 0);
      print[`${name}, stretch ${i + 1}: seconds`] = duration_s;
      print[`${name}, stretch ${i + 1}: MJ`] = (massRatio * heat_J) / 1e6;
    });
    for (const corner of compile(scenario).corners) Object.assign(print, ratesOf(name, { scenario, corner }));
  }
  return print;
}

/** The size of all rates of a corner at made-up temperatures [K/s]. */
function ratesOf(
  name: string,
  { scenario, corner }: { scenario: ReferenceStint['scenario']; corner: CornerModel },
) {
  const { rates, start_K } = equationsOf(scenario, corner);
  const print: Fingerprint = {};
  for (const speed_mps of SPEEDS_MPS)
    for (const pressed of [false, true])
      for (const lowest_K of [310, 520]) {
        const T = start_K.map((_, i) => lowest_K + 37 * ((i * 5) % start_K.length));
        const all = rates(T, { speed_mps, braking_W: pressed ? BRAKING_W : 0, pressed });
        const size = Math.sqrt(all.reduce((sum, rate) => sum + rate ** 2, 0));
        // each node counts by its own weight, so that no two changes make up for each other
        const weighed = all.reduce((sum, rate, i) => sum + rate * (i + 1), 0);
        const where = `${name}, ${corner.corner.axle}, ${speed_mps} m/s, ${pressed ? 'on' : 'off'}, from ${lowest_K} K`;
        print[`${where}: size`] = size;
        print[`${where}: weighed`] = weighed;
      }
  return print;
}

/** Shares of the larger value by which two machines may differ. */
const SAME = 1e-7;

/** The first entries that differ, in words. */
export function differences(now: Fingerprint, then: Fingerprint): string[] {
  const names = new Set([...Object.keys(now), ...Object.keys(then)]);
  return [...names].flatMap((name) => {
    const [a = NaN, b = NaN] = [now[name], then[name]];
    const alike = Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b), 1e-3);
    return alike ? [] : [`${name}: ${b} then, ${a} now`];
  });
}
