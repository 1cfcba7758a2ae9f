/**
 * Where a run used the laws of the model against where they hold. Laws that follow the speed are looked at from the mean to
 * the top speed of the push laps, where the heat goes; tables of materials over the whole run.
 */
import { wakeGapRange, wakeOffsetRange } from '../air/wake.ts';
import { outsideReynolds } from '../disc/body-convection.ts';
import { cheekRange } from '../disc/cheek-mesh.ts';
import type { CornerColumns } from '../disc/columns.ts';
import { stillRange } from '../disc/face-convection.ts';
import { materialRanges, materials } from '../disc/materials.ts';
import { pillarRange } from '../disc/nusselt-cylinder.ts';
import { passingAirRange, rotatingDiscRange } from '../disc/nusselt-face.ts';
import { plateRange } from '../disc/nusselt-plate.ts';
import { turningCylinderRange } from '../disc/nusselt-rim.ts';
import { passageRange, passageShapeRange, rotationRange } from '../disc/nusselt-vane.ts';
import { openWheelRange } from '../disc/outside-air.ts';
import { emissivityRange } from '../disc/radiation.ts';
import { reynoldsFlow, rotationNumber } from '../disc/vane-convection.ts';
import { vanePassage } from '../disc/vane-passage.ts';
import { wheelhouseRange } from '../disc/wheelhouse.ts';
import { ductMachRange } from '../duct/duct-numbers.ts';
import { flattenedRange } from '../duct/flattened.ts';
import { compressionRange, hoseReynoldsRange } from '../duct/hose.ts';
import { bendRange } from '../duct/loss-bend.ts';
import type { ValidRange } from '../valid-range.ts';
import { airPath } from './corner-air.ts';
import type { CornerModel, StintModel } from './compile.ts';
import { ductNumbers } from './duct-pressures.ts';
import { gapAt, legsOf } from './legs.ts';
import { extremes } from './measures.ts';
import type { LapPassage } from './passages.ts';
import type { RangeUse } from './result.ts';

type Used = readonly [range: ValidRange, ...values: number[]];

/** Every law of a corner that has a range, with what the run used of it. */
export function rangesOf(model: StintModel, corner: CornerModel, trace: CornerColumns): RangeUse[] {
  const used: Used[] = [
    ...fixed(model, corner),
    ...bySpeed(model, corner, trace),
    ...materialsUsed(corner, trace),
  ];
  const byRange = new Map<ValidRange, number[]>();
  for (const [range, ...values] of used)
    byRange.set(range, [...(byRange.get(range) ?? []), ...values.filter(Number.isFinite)]);
  return [...byRange]
    .filter(([, values]) => values.length > 0)
    .map(([range, values]) => {
      const [from, to] = [Math.min(...values), Math.max(...values)];
      return { ...range, from, to, left: from < range.low || to > range.high };
    });
}

/** Speed at which a gap in seconds becomes metres. Common practice, no source: a mean lap speed [m/s] */
const GAP_SPEED_MPS = 45;

/** What the scenario itself states. */
function fixed({ scenario }: StintModel, { corner, spec }: CornerModel): Used[] {
  const { duct, disc } = corner.brake;
  const gaps = legsOf(scenario)
    .map(({ gap }) => gapAt(gap, GAP_SPEED_MPS))
    .filter(Number.isFinite);
  return [
    [cheekRange, disc.cheek_mm],
    [stillRange, spec.wheel.still],
    [openWheelRange, spec.wheel.openShare],
    [emissivityRange, ...emissivitiesOf(spec)],
    [compressionRange, duct?.hose_compression_pct ?? NaN],
    [bendRange, ...(duct?.bends ?? []).map((bend) => bend.radius_ratio)],
    ...(duct?.clearance_mm
      ? ([[flattenedRange, Math.min(1, duct.clearance_mm / duct.hose_mm)]] as Used[])
      : []),
    [wakeGapRange, ...gaps],
    ...(gaps.length > 0 ? ([[wakeOffsetRange, scenario.traffic.offset_m]] as Used[]) : []),
  ];
}

/** As corrected, where runs were measured. */
const emissivitiesOf = ({ disc, bell, caliper }: CornerModel['spec']): number[] => [
  disc.emissivityTrack,
  disc.emissivityOther,
  bell.emissivity,
  caliper.emissivity,
];

/** Laws of flow and convection at the mean and the top speed of the push laps, the disc at its mean over them. */
function bySpeed(model: StintModel, { corner, spec }: CornerModel, trace: CornerColumns): Used[] {
  const laps = model.passages.filter((p): p is LapPassage => p.kind === 'push');
  const legs = legsOf(model.scenario);
  const disc_K = meanAtPush(model, trace.cheek_K);
  const passage = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3);
  const one = [...new Map(laps.map((lap) => [`${lap.leg}`, lap])).values()];
  const at = one.flatMap(({ plan, leg, day }) =>
    [plan.end_m.at(-1)! / plan.duration_s, plan.topSpeed_mps].map((speed_mps) => {
      const { scenario, gap } = legs[leg]!;
      const flows = airPath({ corner, scenario, gap });
      const r = speed_mps / flows.speed_mps[1]!;
      const i = Math.min(Math.floor(r), flows.speed_mps.length - 2);
      const flow = (column: Float64Array): number => column[i]! + (r - i) * (column[i + 1]! - column[i]!);
      const wash_mps =
        spec.leakArea_m2 > 0
          ? Math.max(flow(flows.leak_kgps), 0) / (day.density_kgpm3 * spec.leakArea_m2)
          : 0;
      const outside = outsideReynolds(
        spec,
        { speed_mps, wash_mps, air_K: day.ambient_K, pressure_Pa: day.pressure_Pa },
        disc_K,
      );
      return {
        day,
        outside,
        speed_mps,
        duct: ductNumbers(corner, scenario, speed_mps, gap),
        vane_kgps: Math.abs(flow(flows.vane_kgps)),
      };
    }),
  );
  const film_K = (day_K: number): number => (disc_K + day_K) / 2;
  const through = (length_m: number, area_m2: number): number[] =>
    at.map(({ vane_kgps, day }) =>
      reynoldsFlow({ kgps: vane_kgps, area_m2, film_K: film_K(day.ambient_K) }, length_m),
    );
  const inside: Used[] = !passage
    ? []
    : [
        [passageRange, ...through(passage.hydraulicDiameter_m, passage.flowArea_m2)],
        [passageShapeRange, passage.hydraulicDiameter_m / passage.length_m],
        [
          rotationRange,
          ...at.map(({ vane_kgps, day, speed_mps }) =>
            rotationNumber(passage, {
              vane_kgps,
              density_kgpm3: day.density_kgpm3,
              wheel_radps: speed_mps / spec.wheel.loadedRadius_m,
            }),
          ),
        ],
        ...(passage.pillar_m === null
          ? []
          : ([[pillarRange, ...through(passage.pillar_m, passage.flowArea_m2)]] as Used[])),
      ];
  return [
    [rotatingDiscRange, ...at.map(({ outside }) => outside.rotation)],
    [passingAirRange, ...at.map(({ outside }) => outside.passing)],
    [turningCylinderRange, ...at.map(({ outside }) => outside.edge)],
    [plateRange, ...at.flatMap(({ outside }) => [outside.bell, outside.caliper])],
    ...inside,
    [hoseReynoldsRange, ...at.map(({ duct }) => duct?.hoseReynolds || NaN)],
    [ductMachRange, ...at.map(({ duct }) => duct?.mach ?? NaN)],
  ];
}

/** Mean over the samples of all push laps, or over the whole stint where there is none. */
function meanAtPush({ passages }: StintModel, column: Float64Array): number {
  const isAny = passages.every(({ kind }) => kind !== 'push');
  let [sum, samples, first] = [0, 0, 1];
  for (const { kind, plan } of passages) {
    const last = first + plan.steps;
    if (isAny || kind === 'push') {
      for (let i = first; i < last; i++) sum += column[i]!;
      samples += plan.steps;
    }
    first = last;
  }
  return sum / samples;
}

/** Coldest and hottest of what is made of each material. */
function materialsUsed({ spec, start }: CornerModel, trace: CornerColumns): Used[] {
  const standing_K = extremes(trace.wheelhouse_K)[1] - Math.min(start.caliper_K, trace.wheelhouse_K[0]!);
  return [
    [materialRanges[spec.disc.material], ...extremes(trace.face_K), ...extremes(trace.wall_K)],
    [materialRanges[spec.bell.material], ...extremes(trace.bell_K)],
    [materialRanges[spec.pad.material], ...extremes(trace.pad_K)],
    [materialRanges.aluminium, ...extremes(trace.caliper_K)],
    [materialRanges.fluid, ...extremes(trace.fluid_K)],
    [wheelhouseRange, standing_K],
  ];
}
