import { describe, expect, it } from 'vitest';
import { brakeLogOf } from '../../../engine/circuit/brake-log.ts';
import { gaussian, uniform } from '../../support/driving.ts';

const BAR = 1e5;
const time_s = Float64Array.from({ length: 1001 }, (_, i) => i / 20);
const noise = gaussian(uniform(5));

/** Two stops a lap of a sensor that rests at 1.5 bar; pressures in bar. */
const pressed = (t: number): number => (t >= 10 && t < 13 ? 60 : t >= 30 && t < 31 ? 25 : 0);
const column = (of: (t: number) => number): Float64Array =>
  time_s.map((t) => BAR * (1.5 + of(t) + 0.2 * noise()));
const speed_mps = time_s.map(() => 50);

describe('logged brake pressure', () => {
  it('says when the brakes are on, whatever the sensor shows at rest', () => {
    const log = brakeLogOf({ speed_mps, brakeFront_Pa: column(pressed) }, time_s)!;
    expect(log.phases).toHaveLength(2);
    const ends = log.phases.flatMap(({ from_s, to_s }) => [from_s, to_s]);
    [10, 13, 30, 31].forEach((t, i) => expect(Math.abs(ends[i]! - t)).toBeLessThan(0.051));
  });

  it('does not take a foot that rests on the pedal for braking', () => {
    const rides = (t: number): number => Math.max(pressed(t), t >= 20 && t < 22 ? 0.8 : 0);
    expect(brakeLogOf({ speed_mps, brakeFront_Pa: column(rides) }, time_s)!.phases).toHaveLength(2);
  });

  it('is left out where it never rises', () => {
    expect(brakeLogOf({ speed_mps, brakeFront_Pa: column(() => 0) }, time_s)).toBeNull();
    expect(brakeLogOf({ speed_mps }, time_s)).toBeNull();
  });

  it('shares between the axles only where both lines are logged and work', () => {
    const front = column(pressed);
    expect(brakeLogOf({ speed_mps, brakeFront_Pa: front }, time_s)!.lines).toBeNull();
    const dead = column(() => 0);
    expect(brakeLogOf({ speed_mps, brakeFront_Pa: front, brakeRear_Pa: dead }, time_s)!.lines).toBeNull();
    const rear = column((t) => 0.6 * pressed(t));
    expect(brakeLogOf({ speed_mps, brakeFront_Pa: front, brakeRear_Pa: rear }, time_s)!.lines).not.toBeNull();
  });

  it('takes the rear line where only that is logged', () => {
    expect(brakeLogOf({ speed_mps, brakeRear_Pa: column(pressed) }, time_s)!.phases).toHaveLength(2);
  });
});
