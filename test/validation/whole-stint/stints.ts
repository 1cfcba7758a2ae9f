/** The stints that are solved a second time, by the number that data.csv knows them by. */
import { defaultScenario, withCar, withCircuit } from '../../../engine/scenario/library.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import type { StintModel } from '../../../engine/stint/compile.ts';

export interface ReferenceStint {
  name: string;
  scenario: Scenario;
}

/** An out-lap, push laps, an in-lap and ten minutes of standing each. */
export function referenceStints(): ReferenceStint[] {
  const heavy = defaultScenario();
  return [
    { name: 'heavy car, 20 laps of the long circuit', scenario: withCircuit(heavy, 'long') },
    { name: 'heavy car, 20 laps of the fast circuit', scenario: heavy },
    {
      name: 'light car, 20 laps of the slow circuit',
      scenario: withCircuit(withCar(heavy, 'light'), 'slow'),
    },
  ];
}

/** Laps of which every sample is kept, the first stint's and the others'; of the rest one in so many. */
const KEPT = { first: { laps: [1, 2, 19], oneIn: 8 }, other: { laps: [19], oneIn: 16 } };

/** Whether a sample of the engine goes into data.csv: all of them would be megabytes. */
export function chosen(stint: number, { passages }: StintModel, sample: number): boolean {
  const { laps, oneIn } = stint === 0 ? KEPT.first : KEPT.other;
  let last = 0;
  for (const passage of passages) {
    last += passage.plan.steps;
    if (sample > last) continue;
    const isWhole = passage.kind !== 'stand' && laps.includes(passage.lap);
    return isWhole || sample % oneIn === 0;
  }
  return false;
}
