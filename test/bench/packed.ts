/** All numbers that the kernel of a compiled stint reads, one after another, in the order in which kernel.c takes them. */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import { createStepper } from '../../engine/disc/stepper.ts';
import type { CornerModel, StintModel } from '../../engine/stint/compile.ts';

export function packed(model: StintModel): Float64Array {
  const { corners, passages, samples } = model;
  const parts = [
    [corners.length, passages.length, samples],
    ...corners.flatMap((corner) => cornerOf(model, corner)),
  ];
  return Float64Array.from(parts.flatMap((part) => Array.from(part)));
}

type Part = ArrayLike<number>;

function cornerOf({ passages }: StintModel, { corner, spec, start, maps, shares }: CornerModel): Part[] {
  const { network, tables, enthalpy_J, radiation, ...s } = createStepper(spec, start);
  const different = [...new Set(maps)];
  return [
    ...[enthalpy_J, network.link, network.cheekShare, radiation, tables.cellsPerJoule, tables.offset],
    [network.pressed_WpK, s.bridge_WpK4, s.hub_WpK, s.mount_WpK, s.discShare, s.drag_N],
    [tables.entries.length],
    tables.entries,
    [different.length],
    ...different.flatMap(mapOf),
    ...passages.flatMap((passage) => {
      const stands = passage.kind === 'stand';
      const lap = stands ? passage.plan : passage.plan.axles[corner.axle];
      const share = shares[passage.leg]! * (stands ? 1 : passage.massRatio);
      return [
        [lap.steps, different.indexOf(maps[passage.leg]!), share],
        ...[lap.dt_s, lap.speed_mps, lap.power_W, lap.rise_W, lap.bend_W, lap.pressed],
      ];
    }),
  ];
}

const mapOf = (map: ConductanceMap): Part[] => [
  [map.speeds, map.speedStep_mps, map.faceInWheelhouse, map.wheelhouseBuoyant, map.radiationKept],
  ...[map.air_K, map.wheelhouse, map.recirculated, map.sprayFace_W, map.sprayVane_W],
  ...[map.face, map.vane, map.rim, map.bell, map.caliper],
];
