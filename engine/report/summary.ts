/** A result in the trade's units: the object that `--json` prints. Its keys are a contract; see README. */
import { spanTogether, type Reach, type SafeSpan } from '../advise/span.ts';
import { celsius, kmhFromMps } from '../units.ts';
import { restartRecord, soakRecord, type RestartRecord, type SoakRecord } from './driver-records.ts';
import { feelRecord, type FeelRecord } from './feel-records.ts';
import { costRecord, type CostRecord } from './cost-line.ts';
import { printed } from '../said.ts';
import type { AirRow, CornerResult, LapSummary, Ledger, Pull, StintResult } from '../stint/result.ts';

export interface LapRecord {
  lap: number;
  kind: string;
  faceMin_C: number;
  faceMean_C: number;
  faceMax_C: number;
  bulkMax_C: number;
  coldestStop_C: number | null;
  hardStops: number;
  belowBite: number;
  belowBite_s: number;
  aboveFacePeak_s: number;
  aboveBulk_s: number;
  largestDifference_K: number;
  in: boolean | null;
  ledger_J: Ledger;
}

export interface CornerRecord extends FeelRecord {
  side: 'both' | 'left' | 'right';
  laps: LapRecord[];
  facePeak_C: number;
  bulkPeak_C: number;
  vanePeak_C: number;
  padPeak_C: number;
  caliperPeak_C: number;
  fluidPeak_C: number;
  fluidPeakAt_s: number;
  /** Each return from slow or standing; what warm means is written in `restarts.ts`. */
  restarts: RestartRecord[];
  /** After the last lap, or null; and in the long stops between laps. */
  soak: SoakRecord | null;
  stopSoaks: SoakRecord[];
  ledger_J: Ledger;
  /** Of all standing together; with the laps' it makes the stint's. */
  standLedger_J: Ledger;
  air: {
    speed_kmh: number;
    ductFlow_gps: number;
    vaneFlow_gps: number;
    leakFlow_gps: number;
    plenum_Pa: number;
    /** At most, of this corner. */
    drag_N: number;
    dragPower_kW: number;
  }[];
  /** null without a duct */
  ductCost: CostRecord | null;
  /** Of an axle whose sides differ: what keeps both in when both are blanked alike. */
  safeSpan_pct: [low: number, high: number] | null;
  /** Of this corner alone: what bounds its span, what is proposed, why there is none; null where it was not searched. */
  span: SpanRecord | null;
}

/** A notice as it is printed. */
export interface NoticeRecord {
  kind: string;
  text: string;
}

/** Of the draws the counts alone. */
type Told<Of extends Reach> = Omit<Of, 'drawn'>;
type SpanRecord = Omit<Told<SafeSpan>, 'axle' | 'side' | 'span_pct' | 'before'> & {
  before: Told<NonNullable<SafeSpan['before']>> | null;
};

export interface StintRecord {
  name: string;
  axles: { front: CornerRecord; rear: CornerRecord };
  corners?: Record<string, CornerRecord>;
  /** The largest difference of each axle whose sides differ; only with `corners`. */
  pulls?: Pull[];
  lapTime_s: number;
  topSpeed_kmh: number;
  brakeEnergyPerLap_J: number;
  notices: NoticeRecord[];
}

/** Each axle by its hotter corner; all corners as well where sides differ. */
export function summarise(result: StintResult, spans: readonly SafeSpan[] = []): StintRecord {
  const uneven = result.corners.filter((corner) => corner.side !== 'both');
  const record = (corner: CornerResult): CornerRecord => {
    const own = spans.find(({ axle, side }) => axle === corner.axle && side === corner.side);
    return cornerRecord(corner, own);
  };
  const ofAxle = (axle: 'front' | 'rear'): CornerRecord => {
    const both = spans.filter((span) => span.axle === axle);
    return { ...record(hotterOf(result, axle)), safeSpan_pct: spanTogether(both) };
  };
  const corners = Object.fromEntries(
    uneven.map((corner) => [`${corner.axle}_${corner.side}`, record(corner)]),
  );
  return {
    name: result.name,
    axles: { front: ofAxle('front'), rear: ofAxle('rear') },
    ...(uneven.length > 0 ? { corners, pulls: result.pulls } : {}),
    lapTime_s: result.lapTime_s,
    topSpeed_kmh: kmhFromMps(result.topSpeed_mps),
    brakeEnergyPerLap_J: result.brakeEnergyPerLap_J,
    notices: result.notices.map(({ kind, said }) => ({ kind, text: printed(said) })),
  };
}

/** The corner of an axle that an engineer must watch: the one with the higher face peak. */
function hotterOf({ corners }: StintResult, axle: 'front' | 'rear'): CornerResult {
  const [first, second] = corners.filter((corner) => corner.axle === axle);
  if (!first) throw new Error(`no corner: ${axle}`);
  return second && second.facePeak_K > first.facePeak_K ? second : first;
}

function cornerRecord(corner: CornerResult, own: SafeSpan | undefined): CornerRecord {
  return {
    side: corner.side,
    laps: corner.laps.map((lap, i) => lapRecord(lap, corner.lapLedgers_J[i]!)),
    facePeak_C: celsius(corner.facePeak_K),
    bulkPeak_C: celsius(corner.bulkPeak_K),
    vanePeak_C: celsius(corner.vanePeak_K),
    padPeak_C: celsius(corner.padPeak_K),
    caliperPeak_C: celsius(corner.caliperPeak_K),
    fluidPeak_C: celsius(corner.fluidPeak_K),
    fluidPeakAt_s: corner.fluidPeakAt_s,
    ...feelRecord(corner),
    restarts: corner.restarts.map(restartRecord),
    soak: corner.soak && soakRecord(corner.soak),
    stopSoaks: corner.stopSoaks.map(soakRecord),
    ledger_J: corner.ledger_J,
    standLedger_J: corner.standLedger_J,
    air: corner.air.map(airRecord),
    ductCost: corner.ductCost && costRecord(corner.ductCost),
    safeSpan_pct: own?.span_pct ?? null,
    span: own ? spanRecord(own) : null,
  };
}

function spanRecord({ axle: _axle, side: _side, span_pct: _span, ...span }: SafeSpan): SpanRecord {
  return { ...told(span), before: span.before && told(span.before) };
}

function told<Of extends Pick<Reach, 'drawn'>>({ drawn: _drawn, ...rest }: Of): Omit<Of, 'drawn'> {
  return rest;
}

function lapRecord(lap: LapSummary, ledger_J: Ledger): LapRecord {
  const { kind, hardStops, belowBite, belowBite_s, aboveFacePeak_s, aboveBulk_s, largestDifference_K } = lap;
  return {
    lap: lap.lap,
    kind,
    faceMin_C: celsius(lap.faceMin_K),
    faceMean_C: celsius(lap.faceMean_K),
    faceMax_C: celsius(lap.faceMax_K),
    bulkMax_C: celsius(lap.bulkMax_K),
    coldestStop_C: lap.coldestStop_K === null ? null : celsius(lap.coldestStop_K),
    hardStops,
    belowBite,
    belowBite_s,
    aboveFacePeak_s,
    aboveBulk_s,
    largestDifference_K,
    in: lap.in,
    ledger_J,
  };
}

function airRecord({
  speed_mps,
  ductFlow_kgps,
  vaneFlow_kgps,
  leakFlow_kgps,
  plenum_Pa,
  drag_N,
  dragPower_W,
}: AirRow): CornerRecord['air'][number] {
  const grams = (kgps: number): number => 1000 * kgps;
  return {
    speed_kmh: Math.round(kmhFromMps(speed_mps)),
    ductFlow_gps: grams(ductFlow_kgps),
    vaneFlow_gps: grams(vaneFlow_kgps),
    leakFlow_gps: grams(leakFlow_kgps),
    plenum_Pa,
    drag_N,
    dragPower_kW: dragPower_W / 1000,
  };
}
