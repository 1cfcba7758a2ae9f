import { expect, it } from 'vitest';
import { discShare, effusivity } from '../../../engine/car/partition.ts';

// Talati & Jalalifar, Heat and Mass Transfer 45 (2009) 1047: their materials and areas (from memory).
const disc = effusivity(43, 7850, 445);
const pad = effusivity(12, 2500, 900);

it('splits by effusivity alone where disc and pad are equally large', () => {
  expect(discShare({ effusivity: disc, area_m2: 1 }, { effusivity: pad, area_m2: 1 })).toBeCloseTo(
    0.702263,
    6,
  );
});

it('gives more to a disc whose ring passes under a short pad', () => {
  const share = discShare({ effusivity: disc, area_m2: 0.035993 }, { effusivity: pad, area_m2: 0.005 });
  expect(share).toBeCloseTo(0.94438, 5);
});
