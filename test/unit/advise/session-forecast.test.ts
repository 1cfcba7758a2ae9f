import { describe, expect, it } from 'vitest';
import { finished } from '../../../engine/advise/finished.ts';
import { sessionForecast, type CornerReading } from '../../../engine/advise/session-forecast.ts';
import { spread } from '../../../engine/advise/spread.ts';
import { shownBetween } from '../../../engine/evidence/reading.ts';
import { parseEvent } from '../../../engine/scenario/event-parse.ts';
import type { Sensor } from '../../../engine/scenario/sensor-schema.ts';
import { celsius, kelvin } from '../../../engine/units.ts';
import { smallEvent } from '../../support/events.ts';
import { toyStint } from '../../support/toy-stint.ts';

const toy = toyStint({ 'brakes.front.duct.recovery': [0.5, 1], 'car.engine_braking_kW': [10, 80] });
const sample = { draws: 12, seed: 5 };

function sensorOf(over: object): Sensor {
  const read = parseEvent({ version: 1, name: 'one', ...smallEvent, sensor: { lag_s: 0, ...over } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.event.sensor!;
}
const forecast = (sensor: Sensor | null) => finished(sessionForecast(toy, { ...sample, sensor }));
const front = (sensor: Sensor): CornerReading => forecast(sensor).readings![0]!;
const ideal = sensorOf({ kind: 'rubbing', off_K: { low: 0, high: 0 } });
const { window } = toy.brakes.front;

describe('what a session is likely to bring', () => {
  it('has the draws of the spread, and no reading where no sensor is described', () => {
    const { readings, ...draws } = forecast(null);
    expect(readings).toBeNull();
    expect(draws).toEqual(finished(spread(toy, sample)));
    expect(forecast(ideal)).toMatchObject(draws);
  });

  it('puts the limits of a sensor that errs in nothing where the window has them', () => {
    const { above_K, below_K } = front(ideal);
    expect(Math.abs(celsius(above_K!) - window.face_peak_C)).toBeLessThan(2);
    expect(celsius(below_K!)).toBeCloseTo(window.bite_C, 0);
  });

  it('lowers the hot limit and raises the cold one where the sensor comes late', () => {
    const late = front(sensorOf({ kind: 'rubbing', lag_s: 1.5, off_K: { low: 0, high: 0 } }));
    expect(late.above_K!).toBeLessThan(front(ideal).above_K! - 10);
    expect(late.below_K!).toBeGreaterThan(front(ideal).below_K! + 2);
    expect(late.hottest_K[1]).toBeLessThan(front(ideal).hottest_K[1]);
  });

  it('takes both limits of the sensor that reads the lowest, for doubt is no reason to close', () => {
    const off = front(sensorOf({ kind: 'rubbing', off_K: { low: -30, high: 40 } }));
    expect(off.above_K! - front(ideal).above_K!).toBeCloseTo(-30, 9);
    expect(off.below_K! - front(ideal).below_K!).toBeCloseTo(-30, 9);
    expect(off.hottest_K[0] - front(ideal).hottest_K[0]).toBeCloseTo(-30, 9);
    expect(off.hottest_K[1] - front(ideal).hottest_K[1]).toBeCloseTo(40, 9);
  });

  it('reads low by infrared on a face that radiates less than the sensor is set to', () => {
    const infrared = sensorOf({ kind: 'infrared' });
    const [low, high] = shownBetween(kelvin(600), infrared);
    expect([celsius(low) < celsius(high), celsius(high) < 600]).toEqual([true, true]);
    expect(front(infrared).above_K!).toBeCloseTo(shownBetween(front(ideal).above_K!, infrared)[0], 3);
  });
});
