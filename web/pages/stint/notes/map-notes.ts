/** Notes on all blankings: the columns of the table with the values of one row, and a lap at a blanking. */
import type { BlankedLap, BlankingMap, BlankingRow, WindowLimits } from '../../../../engine/index.ts';
import { blankedLap } from '../../../display/blanked-lap.ts';
import { kelvins, level, levelStep, NBSP, percent } from '../../../display/format.ts';
import { degrees, inUnit, unitFor, unitName } from '../../../display/units.ts';
import { blankNote } from './blank-notes.ts';
import {
  bracketed,
  countLine,
  marginLine,
  smallerLine,
  SUPPLIER,
  worked,
  type About,
  type Line,
  type Maker,
  type Note,
  type Told,
} from './note.ts';

const MODEL = 'The window';
const RUNS = 'whole runs of this stint, one at every 5 % and at each percent where a lap turns';
const BETWEEN = `${RUNS}; between two of them in proportion`;

const mapOf = ({ corner }: About, { maps }: Told): BlankingMap | undefined =>
  maps?.find(({ axle, side }) => axle === corner.axle && (side === 'both' || side === corner.side));

const ofRow =
  (make: (row: BlankingRow, map: BlankingMap) => Omit<Note, 'source' | 'model'> | null): Maker =>
  (about, told) => {
    const map = mapOf(about, told);
    const row = map?.rows.find(({ blanking_pct }) => blanking_pct === Number(about.more[0]));
    const note = map && row ? make(row, map) : null;
    return (
      note && {
        ...note,
        name: `${note.name} at ${percent(Number(about.more[0]))}`,
        source: RUNS,
        model: MODEL,
      }
    );
  };

const lapsIn = ofRow(({ laps }) => {
  const counted = laps.filter((lap) => lap.in !== null);
  const out = counted.filter((lap) => !lap.in).length;
  return {
    name: 'counted laps in',
    value: String(counted.length - out),
    what: 'How many of the laps that count stay inside the window with so much blanked.',
    lines: [countLine('laps that count − laps out', [counted.length, out])],
  };
});

const firstOut = ofRow(({ verdict: { firstLapOut }, laps }) => {
  const lap = laps.find((each) => each.lap === firstLapOut);
  return {
    name: 'first lap out',
    value: lap ? String(lap.lap) : 'none',
    what: 'The first lap that counts and is past a limit by more than a short moment; below, what it has to spare.',
    lines: lap ? [smallerLine(lap)] : [],
  };
});

const margin = (way: 'hot' | 'cold') =>
  ofRow(({ verdict }, { window }) => {
    const margin_K = way === 'hot' ? verdict.hotMargin_K : verdict.coldMargin_K;
    if (!Number.isFinite(margin_K)) return null;
    const line = marginLine(way === 'hot' ? verdict.hotLimit : verdict.coldLimit, window, margin_K);
    const lap = way === 'hot' ? verdict.hotLap : verdict.coldLap;
    return {
      name: `${way} margin`,
      value: kelvins(margin_K),
      what: `What is left to the nearest limit that is too ${way}, on the laps that count: lap${NBSP}${lap}. Below zero it is past it; ${SUPPLIER}.`,
      lines: line ? [line] : [],
    };
  });

const blanking: Maker = (about, told) => {
  const duct = told.run.scenario.brakes[about.corner.axle].duct;
  if (!duct) return null;
  const share = Number(about.more[0]);
  return blankNote(share, duct, { name: `blanking of ${percent(share)}`, setBy: '' });
};

/** A place on the map: the lap's place in the list and a whole percent. */
interface Spot {
  lap: BlankedLap;
  below: BlankedLap;
  above: BlankedLap;
  pct: number;
  low_pct: number;
  high_pct: number;
  window: WindowLimits;
}

const ofSpot =
  (make: (spot: Spot) => Omit<Note, 'source' | 'model'>): Maker =>
  (about, told) => {
    const map = mapOf(about, told);
    const [place = 0, pct = 0] = about.more.map(Number);
    const lap = map && blankedLap(map, place, pct);
    const high = map?.rows.find((row) => row.blanking_pct >= pct);
    const low = map?.rows.findLast((row) => row.blanking_pct <= pct);
    const [below, above] = [low?.laps[place], high?.laps[place]];
    if (!map || !lap || !below || !above || !low || !high) return null;
    const ends = { low_pct: low.blanking_pct, high_pct: high.blanking_pct };
    return {
      ...make({ lap, below, above, pct, ...ends, window: map.window }),
      source: BETWEEN,
      model: MODEL,
    };
  };

/** Between two runs in proportion; null where it was run itself. */
function betweenLine(spot: Spot, of: (lap: BlankedLap) => number, unit: string, step: number): Line | null {
  const { below, above, pct, low_pct, high_pct } = spot;
  if (low_pct === high_pct) return null;
  return worked({
    equation: 'X low + (X high − X low) · (B − B low) / (B high − B low)',
    values: [of(below), of(above), pct, low_pct, high_pct],
    write: ([from, to, at, low, high]) =>
      `${from} + (${to} − ${bracketed(from)}) · (${at} − ${low}) / (${high} − ${low})`,
    of: ([from = 0, to = 0, at = 0, low = 0, high = 1]) => from + ((to - from) * (at - low)) / (high - low),
    unit,
    step,
  });
}

const peak = ofSpot((spot) => {
  const { lap, pct, window } = spot;
  const line = betweenLine(spot, ({ faceMax_K }) => degrees(faceMax_K), unitName('°C'), levelStep());
  return {
    name: 'peak',
    value: level(lap.faceMax_K),
    what: `The hottest that the face gets on lap${NBSP}${lap.lap} with ${percent(pct)} blanked.`,
    lines: [
      line ??
        worked({
          equation: 'T face peak − what is left to it',
          values: [degrees(window.facePeak_K), inUnit(window.facePeak_K - lap.faceMax_K, unitFor('K'))],
          write: ([limit, left]) => `${limit} − ${bracketed(left)}`,
          of: ([limit = 0, left = 0]) => limit - left,
          unit: unitName('°C'),
          step: levelStep(),
        }),
    ],
  };
});

const spare = ofSpot((spot) => {
  const { lap, pct } = spot;
  const isHot = lap.tooHot || (!lap.tooCold && lap.hotMargin_K <= lap.coldMargin_K);
  const of = (one: BlankedLap): number => (isHot ? one.hotMargin_K : one.coldMargin_K);
  const inShown = (one: BlankedLap): number => inUnit(of(one), unitFor('K'));
  return {
    name: of(lap) < 0 ? 'past its limit by' : 'to spare',
    value: kelvins(of(lap)),
    what: `What lap${NBSP}${lap.lap} with ${percent(pct)} blanked leaves to the limit that is ${isHot ? 'too hot' : 'too cold'}.`,
    lines: [betweenLine(spot, inShown, unitName('K'), 1) ?? smallerLine(lap)],
  };
});

export const mapNotes = {
  'map.blanking': blanking,
  'map.in': lapsIn,
  'map.firstOut': firstOut,
  'map.hot': margin('hot'),
  'map.cold': margin('cold'),
  'point.peak': peak,
  'point.spare': spare,
};
