import { describe, expect, it } from 'vitest';
import { changed, driven, settled } from '../../support/stints.ts';
import { bothCars, expectWithin } from '../../support/trade.ts';

describe.each(bothCars)(
  'behind another car, $name car (common practice, no source)',
  ({ base, front, result, anew, held }) => {
    it('costs some at half a second and more nose to tail', () => {
      expectWithin(anew({ 'traffic.gap_s': 0.5 }).faceMax_K - front.faceMax_K, [15, 40]);
      expectWithin(anew({ 'traffic.gap_m': 8 }).faceMax_K - front.faceMax_K, [25, 80]);
    });

    it('the tow is part of it: the car arrives faster, and is hotter than by the wake alone', () => {
      const towed = driven(changed({ 'traffic.gap_m': 8 }, base));
      const wakeAlone_K = held({ 'traffic.gap_m': 8 }).faceMax_K;
      expect(towed.topSpeed_mps).toBeGreaterThan(result.topSpeed_mps + 1);
      expect(settled(towed, 'front').faceMax_K).toBeGreaterThan(wakeAlone_K + 10);
      expect(wakeAlone_K).toBeGreaterThan(front.faceMax_K + 10);
    });
  },
);
