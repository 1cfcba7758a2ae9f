import type {
  CornerColumns,
  CornerResult,
  Lap,
  LapKind,
  LapSummary,
  Ledger,
  Ledgers,
  PhaseFacts,
  PhaseSpan,
  StintResult,
  Stop,
  Track,
  Verdict,
} from '../../engine/index.ts';

/** An invented result for tests of drawings: the shapes are plausible, no number in it is physics. */
export interface SampleOptions {
  /** Share of the cooling that is left: less is hotter. */
  cooling?: number;
  kinds?: LapKind[];
  stand_s?: number;
  samplesPerLap?: number;
  hasMap?: boolean;
}

const AMBIENT_K = 299;
const LENGTH_M = 5300;
const BITE_K = 673;
const FACE_PEAK_K = 923;

/** [name, start of braking m, length m, entry m/s, exit m/s] */
const bends: [string, number, number, number, number][] = [
  ['turn 1', 640, 110, 76, 45],
  ['turn 3', 1240, 80, 66, 43],
  ['turn 4', 1530, 45, 50, 38],
  ['turn 7', 2730, 160, 79, 30],
  ['turn 8', 3180, 40, 50, 42],
  ['turn 9', 3410, 20, 46, 39],
  ['turn 11', 4160, 100, 68, 44],
  ['turn 12', 4570, 30, 50, 44],
];

export const ordinaryKinds: LapKind[] = ['out', ...new Array<LapKind>(18).fill('push'), 'in'];
export const restartKinds: LapKind[] = [
  'out',
  ...new Array<LapKind>(9).fill('push'),
  'safety',
  'safety',
  ...new Array<LapKind>(7).fill('push'),
  'in',
];

const pace: Record<LapKind, number> = { out: 0.8, push: 1, safety: 0.45, in: 0.6 };

export function sampleResult(options: SampleOptions = {}): StintResult {
  const { kinds = ordinaryKinds, stand_s = 180, samplesPerLap = 400, cooling = 0.5, hasMap = true } = options;
  const lap_s = kinds.map((kind) => 95 / pace[kind]);
  const drive_s = lap_s.reduce((sum, s) => sum + s, 0);
  const count = kinds.length * samplesPerLap + Math.round(stand_s);
  const time_s = new Float64Array(count);
  const distance_m = new Float64Array(count);
  const speed_mps = new Float64Array(count);
  const brakePower_W = new Float64Array(count);
  const laps: Lap[] = [];
  let start_s = 0;
  kinds.forEach((kind, k) => {
    const end_s = start_s + (lap_s[k] ?? 0);
    const firstSample = k * samplesPerLap;
    for (let i = 0; i < samplesPerLap; i++) {
      const at = firstSample + i;
      const share = i / samplesPerLap;
      time_s[at] = start_s + share * (end_s - start_s);
      distance_m[at] = share * LENGTH_M;
      speed_mps[at] = speedAt(share * LENGTH_M) * pace[kind];
      brakePower_W[at] = isBraking(share * LENGTH_M) ? 6e5 * pace[kind] ** 3 : 0;
    }
    const counted = kind === 'push' && k >= 4 && kinds[k - 1] === 'push' && kinds[k - 3] === 'push';
    laps.push({
      lap: k + 1,
      kind,
      phase: kinds.slice(1, k + 1).filter((one, i) => one !== kinds[i]).length,
      counted,
      wet: false,
      ambient_K: 299.15,
      start_s,
      end_s,
      firstSample,
      lastSample: firstSample + samplesPerLap - 1,
    });
    start_s = end_s;
  });
  for (let i = kinds.length * samplesPerLap; i < count; i++) {
    time_s[i] = drive_s + ((i - kinds.length * samplesPerLap + 1) / stand_s) * stand_s;
  }
  const clock = { time_s, distance_m, speed_mps, brakePower_W };
  const corners = [corner('front', clock, laps, cooling, 1), corner('rear', clock, laps, cooling, 0.78)];
  return {
    name: 'sample',
    laps,
    phases: phasesOf(laps, stand_s),
    clock,
    corners,
    pulls: [],
    track: track(hasMap),
    lapTime_s: 95,
    topSpeed_mps: 79,
    brakeEnergyPerLap_J: 8e6,
    notices: [],
  };
}

function speedAt(at_m: number): number {
  const index = bends.findIndex(([, start, length]) => at_m < start + length);
  const [, start, length, entry, exit] = bends[index] ?? ['', LENGTH_M, 1, 74, 74];
  const before = bends[(index < 0 ? bends.length : index) - 1];
  if (at_m >= start) return entry + ((exit - entry) * (at_m - start)) / length;
  const [from_m, from] = before ? [before[1] + before[2], before[4]] : [-700, 44];
  return from + (entry - from) * Math.sqrt(Math.max(0, at_m - from_m) / (start - from_m));
}

const isBraking = (at_m: number): boolean =>
  bends.some(([, start, length]) => at_m >= start && at_m < start + length);

type Clock = StintResult['clock'];

function corner(
  axle: 'front' | 'rear',
  clock: Clock,
  laps: Lap[],
  cooling: number,
  share: number,
): CornerResult {
  const columns = columnsOf(clock, cooling, share);
  const window = { bite_K: BITE_K, facePeak_K: FACE_PEAK_K, bulk_K: 893, run_K: null };
  const limits = axle === 'front' ? window : { ...window, bite_K: 573, facePeak_K: 873 };
  const stops = laps.flatMap((lap) => stopsOf(lap, clock, columns));
  const summaries = laps.map((lap) => summaryOf(lap, stops, columns, limits));
  const face = Math.max(...summaries.map((lap) => lap.faceMax_K));
  return {
    axle,
    side: 'both',
    window: limits,
    columns,
    laps: summaries,
    stops,
    restarts: [],
    soak: null,
    stopSoaks: [],
    verdict: verdictOf(laps, summaries, limits),
    facePeak_K: face,
    bulkPeak_K: face - 90,
    vanePeak_K: face - 120,
    padPeak_K: face - 150,
    caliperPeak_K: 420,
    fluidPeak_K: 390,
    fluidPeakAt_s: (clock.time_s.at(-1) ?? 0) - 60,
    fluidMargin_K: 63,
    fluidClassMargin_K: 63,
    fluidCall: 'comfortable',
    damage: {
      largestDifference_K: 150,
      place: 'turn 1',
      lap: 5,
      stopsAbove200: 0,
      stops: stops.length,
      aboveFacePeak_s: 4.2,
      belowBite_s: 0,
      aboveBulk_s: 0,
    },
    pedal: {
      middle_K: (limits.bite_K + limits.facePeak_K) / 2,
      highest: 1.06,
      place: 'turn 1',
      lap: 5,
      lowest: 0.98,
      lowestPlace: 'turn 1',
      lowestLap: 5,
    },
    wheelhousePeak_K: AMBIENT_K + 8,
    ...ledgersOf(laps.length),
    air: [],
    phaseAir: [],
    ductCost: null,
    pressures: null,
    ranges: [],
  };
}

/** Each lap alike; nothing stands. */
function ledgersOf(laps: number): Ledgers {
  const times = (n: number): Ledger => ({
    brakeHeat: n * 2e6,
    stored: n * 1e5,
    vaneAir: n * 9.5e5,
    faceAir: n * 6e5,
    otherAir: n * 5e4,
    radiation: n * 2.5e5,
    conducted: n * 5e4,
    residual: 0,
  });
  return {
    ledger_J: times(laps),
    lapLedgers_J: Array.from({ length: laps }, () => times(1)),
    standLedger_J: times(0),
  };
}

function columnsOf(clock: Clock, cooling: number, share: number): CornerColumns {
  const count = clock.time_s.length;
  const make = (): Float64Array => new Float64Array(count);
  const columns: CornerColumns = {
    face_K: make(),
    cheek_K: make(),
    wall_K: make(),
    rim_K: make(),
    bell_K: make(),
    pad_K: make(),
    caliper_K: make(),
    fluid_K: make(),
    wheelhouse_K: make(),
  };
  const now = { skin: AMBIENT_K, cheek: AMBIENT_K, bell: AMBIENT_K, pad: AMBIENT_K, caliper: AMBIENT_K };
  for (let i = 0; i < count; i++) {
    const dt = i ? (clock.time_s[i] ?? 0) - (clock.time_s[i - 1] ?? 0) : 0;
    const heat = (clock.brakePower_W[i] ?? 0) * 0.31 * share;
    const air = (6 + 60 * cooling * ((clock.speed_mps[i] ?? 0) / 60)) * 1.05;
    const steps = Math.max(1, Math.ceil(dt / 0.1));
    for (let k = 0; k < steps; k++) {
      const part = dt / steps;
      const through = 1500 * (now.skin - now.cheek);
      now.skin += (part * (heat - through)) / 1400;
      now.cheek +=
        (part * (through - air * (now.cheek - AMBIENT_K) - 3.2e-9 * (now.cheek ** 4 - AMBIENT_K ** 4))) /
        3600;
      now.bell += (part * (now.cheek - now.bell)) / 700 - (part * (now.bell - AMBIENT_K)) / 900;
      now.pad += (part * (now.skin - now.pad)) / 60 - (part * (now.pad - AMBIENT_K)) / 240;
      now.caliper += (part * (now.pad - now.caliper)) / 600 - (part * (now.caliper - AMBIENT_K)) / 250;
    }
    columns.face_K[i] = now.skin;
    columns.cheek_K[i] = now.cheek;
    columns.wall_K[i] = now.cheek - 0.12 * (now.skin - now.cheek) - 12;
    columns.rim_K[i] = now.cheek - 10;
    columns.bell_K[i] = now.bell;
    columns.pad_K[i] = now.pad;
    columns.caliper_K[i] = now.caliper;
    columns.fluid_K[i] = AMBIENT_K + 0.8 * (now.caliper - AMBIENT_K);
    columns.wheelhouse_K[i] = AMBIENT_K + 0.02 * (now.cheek - AMBIENT_K);
  }
  return columns;
}

function stopsOf(lap: Lap, clock: Clock, columns: CornerColumns): Stop[] {
  return bends.map(([place, start_m, length_m, entry]) => {
    const at = (m: number): number =>
      lap.firstSample + Math.round((m / LENGTH_M) * (lap.lastSample - lap.firstSample + 1));
    const [from, to] = [at(start_m), at(start_m + length_m)];
    return {
      lap: lap.lap,
      place,
      distance_m: start_m,
      start_s: clock.time_s[from] ?? 0,
      end_s: clock.time_s[to] ?? 0,
      hard: entry > 60 && lap.kind !== 'safety',
      startFace_K: columns.face_K[from] ?? 0,
      peakFace_K: Math.max(...columns.face_K.subarray(from, to + 3)),
      largestDifference_K: 150,
      pedal: { start: 1.03, lowest: 0.98, highest: 1.06 },
    };
  });
}

function summaryOf(
  lap: Lap,
  stops: Stop[],
  columns: CornerColumns,
  limits: CornerResult['window'],
): LapSummary {
  const face = columns.face_K.subarray(lap.firstSample, lap.lastSample + 1);
  const cheek = columns.cheek_K.subarray(lap.firstSample, lap.lastSample + 1);
  const mean = (values: Float64Array): number => values.reduce((sum, v) => sum + v, 0) / values.length;
  const hard = stops.filter((stop) => stop.lap === lap.lap && stop.hard);
  const coldest = [...hard].sort((a, b) => a.startFace_K - b.startFace_K)[0];
  const hottest = stops.filter((s) => s.lap === lap.lap).sort((a, b) => b.peakFace_K - a.peakFace_K)[0];
  const faceMax_K = Math.max(...face);
  return {
    lap: lap.lap,
    kind: lap.kind,
    faceMin_K: Math.min(...face),
    faceMean_K: mean(face),
    faceMax_K,
    facePeakPlace: hottest?.place ?? '',
    bulkMax_K: Math.max(...cheek),
    bulkMean_K: mean(cheek),
    coldestStop_K: coldest?.startFace_K ?? null,
    coldestStopPlace: coldest?.place ?? null,
    hardStops: hard.length,
    belowBite: hard.filter((stop) => stop.startFace_K < limits.bite_K).length,
    tooHot: false,
    tooCold: false,
    belowBite_s: 0,
    aboveFacePeak_s: face.filter((value) => value > limits.facePeak_K).length * 0.24,
    aboveBulk_s: 0,
    largestDifference_K: 150,
    in: lap.counted
      ? faceMax_K <= limits.facePeak_K && (coldest?.startFace_K ?? Infinity) >= limits.bite_K
      : null,
  };
}

function verdictOf(laps: Lap[], summaries: LapSummary[], limits: CornerResult['window']): Verdict {
  const counted = summaries.filter((_, i) => laps[i]?.counted);
  const hot = [...counted].sort((a, b) => b.faceMax_K - a.faceMax_K)[0];
  const cold = [...counted].sort((a, b) => (a.coldestStop_K ?? 9e9) - (b.coldestStop_K ?? 9e9))[0];
  const facePeak_K = hot?.faceMax_K ?? 0;
  const coldestStop_K = cold?.coldestStop_K ?? null;
  const hotMargin_K = limits.facePeak_K - facePeak_K;
  const coldMargin_K = (coldestStop_K ?? 9e9) - limits.bite_K;
  const status = hotMargin_K < 0 ? (coldMargin_K < 0 ? 'both' : 'hot') : coldMargin_K < 0 ? 'cold' : 'in';
  return {
    status,
    reason: null,
    countedLaps: counted.length,
    firstLapOut: counted.find((lap) => lap.in === false)?.lap ?? null,
    hotMargin_K,
    hotLimit: 'face peak',
    hotPlace: hot?.facePeakPlace ?? '',
    hotLap: hot?.lap ?? 0,
    coldMargin_K,
    coldLimit: 'bite',
    coldPlace: cold?.coldestStopPlace ?? '',
    coldLap: cold?.lap ?? 0,
    facePeak_K,
    coldestStop_K,
    swing_K: coldestStop_K === null ? null : facePeak_K - coldestStop_K,
  };
}

const plain: PhaseFacts & Pick<PhaseSpan, 'changed'> = {
  gap: null,
  wet: false,
  ambient_K: 299.15,
  blanking_pct: { front: 50, rear: 50 },
  fuel_kg: 60,
  balance: 0.62,
  driver: {
    grip_share_braking_dry: 0.7,
    grip_share_braking_wet: 0.5,
    grip_share_cornering: 0.9,
    grip_share_traction: 0.8,
    coast_s: 0.2,
    build_up_s: 0.2,
  },
  changed: [],
};

function phasesOf(laps: Lap[], stand_s: number): PhaseSpan[] {
  const spans: PhaseSpan[] = [];
  for (const lap of laps) {
    const last = spans.at(-1);
    if (last?.kind === lap.kind && last.laps) {
      last.laps[1] = lap.lap;
      last.end_s = lap.end_s;
    } else {
      spans.push({
        ...plain,
        kind: lap.kind,
        index: spans.length,
        laps: [lap.lap, lap.lap],
        start_s: lap.start_s,
        end_s: lap.end_s,
        brakeHeld: false,
      });
    }
  }
  const end_s = laps.at(-1)?.end_s ?? 0;
  if (stand_s > 0) {
    const index = spans.length;
    const times = { start_s: end_s, end_s: end_s + stand_s };
    spans.push({ ...plain, kind: 'stand', index, laps: null, ...times, brakeHeld: false });
  }
  return spans;
}

function track(hasMap: boolean): Track {
  const corners = bends.map(([name, start, length]) => ({ name, at_m: start + length }));
  if (!hasMap) return { length_m: LENGTH_M, outline: null, corners };
  const count = 531;
  const distance_m = Float64Array.from({ length: count }, (_, i) => i * 10);
  const angle = (i: number): number => (i / (count - 1)) * 2 * Math.PI;
  const radius = (i: number): number =>
    640 + 170 * Math.cos(2 * angle(i) + 0.6) + 150 * Math.sin(3 * angle(i)) + 60 * Math.cos(5 * angle(i));
  const x_m = Float64Array.from({ length: count }, (_, i) => 1.3 * radius(i) * Math.cos(angle(i)));
  const y_m = Float64Array.from({ length: count }, (_, i) => radius(i) * Math.sin(angle(i)));
  return { length_m: LENGTH_M, outline: { distance_m, x_m, y_m }, corners };
}
