/** Notes on the driver's line: how cold the discs come back, and what soaks while the car stands. */
import type { Soak, SoakRise } from '../../../../engine/index.ts';
import {
  cornersWord,
  driverFacts,
  isStillRising,
  type At,
  type DriverFacts,
} from '../../../display/driver-line.ts';
import { kelvins, level, levelStep, minutes, NBSP } from '../../../display/format.ts';
import { degrees, inUnit, unitFor, unitName } from '../../../display/units.ts';
import { countLine, lessLine, RUN, SUPPLIER, worked, type Line, type Maker, type Note } from './note.ts';

/** A note on what the line speaks of, where it is of the corner that the key names. */
const ofFact =
  <T>(
    pick: (facts: DriverFacts) => At<T> | undefined,
    make: (fact: At<T>) => (Omit<Note, 'source'> & Partial<Note>) | null,
  ): Maker =>
  ({ corner }, { run }) => {
    const fact = pick(driverFacts(run.result));
    const note = fact?.corner === corner ? make(fact) : null;
    return note && { source: RUN, ...note };
  };

const HEAT: Line = { equation: 'dH/dt = heat that comes in − heat that goes out', filled: '' };

const restartFace = ofFact(
  ({ restart }) => restart,
  ({ corner, it }) => {
    const first = corner.stops.findIndex(({ lap, hard }) => hard && lap >= it.firstStopLap);
    const before = corner.stops[first - 1];
    return {
      name: 'start of the first hard stop',
      value: level(it.firstStop_K),
      what: `The face as the brake is first pressed hard at pace again, on lap${NBSP}${it.firstStopLap}; the discs cool while the car is slow or stands.`,
      lines: [HEAT, ...(before ? [cooledLine(before.peakFace_K, it.firstStop_K)] : [])],
      model: 'Disc',
    };
  },
);

/** From the peak of one stop to the start of the next. */
const cooledLine = (peak_K: number, start_K: number): Line =>
  worked({
    equation: 'T start = T peak of the stop before − what it cools since',
    values: [degrees(peak_K), inUnit(peak_K - start_K, unitFor('K'))],
    write: ([peak, cooled]) => `${peak} − ${cooled}`,
    of: ([peak = 0, cooled = 0]) => peak - cooled,
    unit: unitName('°C'),
    step: levelStep(),
  });

const restartUnder = ofFact(
  ({ restart }) => restart,
  ({ corner, it }) => ({
    name: 'under bite',
    value: kelvins(it.underBite_K),
    what: 'So much colder than bite the face is there: the driver finds less brake than the pedal promises.',
    lines: [lessLine('T bite − T start', corner.window.bite_K, it.firstStop_K)],
    source: `${SUPPLIER}; ${RUN}`,
    model: 'The window',
  }),
);

const restartWarm = ofFact(
  ({ restart, start }) => restart ?? start,
  ({ corner, it }) => {
    if (it.brakesToWarm === null) return null;
    const before = corner.stops.filter(({ lap }) => lap < it.lap).length;
    return {
      name: 'corners to warm',
      value: cornersWord(it.brakesToWarm),
      what: 'Stops, hard or not, until a hard one starts at bite or above and none after it far below.',
      lines: [
        countLine('stops until it is warm − stops before the restart', [before + it.brakesToWarm, before]),
      ],
      model: 'The window',
    };
  },
);

const soaked = (part: 'caliper' | 'fluid', what: string): Maker =>
  ofFact(
    ({ standing }) => standing,
    ({ it }) => ({
      name: `${part} while the car stands`,
      value: risen(it[part], it),
      what,
      lines: [HEAT, risenLine(it[part])],
      model: 'The window',
    }),
  );

/** As the line has it after its verb. */
function risen(rise: SoakRise, soak: Soak): string {
  if (rise.rise_K < 0.5) return level(rise.start_K);
  return isStillRising(rise, soak)
    ? `${level(rise.peak_K)} after ${minutes(soak.standing_s)}`
    : `${level(rise.peak_K)} in ${minutes(rise.peakAfter_s)}`;
}

const risenLine = ({ start_K, rise_K }: SoakRise): Line =>
  worked({
    equation: 'T peak = T as the car stops + rise',
    values: [degrees(start_K), inUnit(rise_K < 0.5 ? 0 : rise_K, unitFor('K'))],
    write: ([start, rise]) => `${start} + ${rise}`,
    of: ([start = 0, rise = 0]) => start + rise,
    unit: unitName('°C'),
    step: levelStep(),
  });

const leftTo = (
  part: 'caliper' | 'fluid',
  limit: { name: string; symbol: string; what: string; source: string },
): Maker =>
  ofFact(
    ({ standing }) => standing,
    ({ it }) => {
      const margin_K = part === 'caliper' ? it.caliperMargin_K : it.fluidMargin_K;
      const { peak_K } = it[part];
      const isOver = margin_K < 0;
      return {
        name: `${isOver ? 'above' : 'from'} ${limit.name}`,
        value: kelvins(margin_K),
        what: limit.what,
        lines: [
          isOver
            ? lessLine(`T peak − ${limit.symbol}`, peak_K, peak_K + margin_K)
            : lessLine(`${limit.symbol} − T peak`, peak_K + margin_K, peak_K),
        ],
        source: limit.source,
        model: 'The window',
      };
    },
  );

export const driverNotes = {
  'restart.face': restartFace,
  'restart.under': restartUnder,
  'restart.warm': restartWarm,
  'soak.caliper': soaked(
    'caliper',
    'No air is driven through any more: heat of disc and pad goes on into the caliper, which peaks late.',
  ),
  'soak.caution': leftTo('caliper', {
    name: 'the caliper’s caution',
    symbol: 'T caution',
    what: 'The caution entered for the caliper against its peak while the car stands.',
    source: 'the caution is the one entered as the caliper’s',
  }),
  'soak.fluid': soaked('fluid', 'The fluid follows the caliper that holds it, and peaks later.'),
  'soak.boiling': leftTo('fluid', {
    name: 'wet boiling',
    symbol: 'T wet boiling',
    what: 'The wet boiling point entered for the fluid against its peak while the car stands.',
    source: 'the boiling point is the one entered from the fluid’s label',
  }),
};
