import { describe, expect, it } from 'vitest';
import type { ConductanceMap } from '../../../engine/disc/conductance-map.ts';
import { materials } from '../../../engine/disc/materials.ts';
import { valueAtTemperature } from '../../../engine/disc/materials/material.ts';
import { CAST, NODE, NODES } from '../../../engine/disc/network.ts';
import { makeRates } from '../../../engine/disc/rates.ts';
import { BOOK, nodeTemperatures } from '../../../engine/disc/stepper.ts';
import { WALL_LOW_K, WALL_STEP_K, WALLS } from '../../../engine/disc/wall-grid.ts';
import { riseWheelhouse } from '../../../engine/disc/wheelhouse.ts';
import { stillMap } from '../../support/bare-slab.ts';
import { bareAt, cornerAt, links, spec, SPEED, step, temperatures } from '../../support/one-corner.ts';

/** So short that a step gains what it gains at its start [s] */
const INSTANT_S = 1e-6;
const { rim, bell, caliper, padFace, face, wall } = NODE;
const isCast = (node: number): boolean => node >= CAST;

type Surface = 'face' | 'vane' | 'rim' | 'bell' | 'caliper';
/** Straight lines over speed and wall temperature, so that the map has no error: W/K at rest, per m/s, per K. */
const lines: Record<Surface, readonly [number, number, number]> = {
  face: [8, 0.3, 0.01],
  vane: [12, 0.5, -0.006],
  rim: [1, 0.04, 0.002],
  bell: [2, 0.07, 0.003],
  caliper: [3, 0.09, -0.004],
};
const lineAt = (name: Surface, speed_mps: number, wall_K: number): number =>
  lines[name][0] + lines[name][1] * speed_mps + lines[name][2] * wall_K;

const STEP_MPS = 10;
const SPEEDS = 6;
const overSpeed = (law: (speed_mps: number) => number): Float64Array =>
  Float64Array.from({ length: SPEEDS }, (_, i) => law(i * STEP_MPS));
const overWalls = (name: Surface): Float64Array =>
  Float64Array.from({ length: SPEEDS * WALLS }, (_, i) =>
    lineAt(name, Math.floor(i / WALLS) * STEP_MPS, WALL_LOW_K + (i % WALLS) * WALL_STEP_K),
  );
const driven = (v: number): number => 5 + 0.8 * v;
const recirculated = (v: number): number => 0.1 + 0.004 * v;
const air_K = (v: number): number => 300 + 0.2 * v;
const [onFace, buoyant, kept] = [0.6, 1.3, 0.4];
const sprayed: ConductanceMap = {
  speedStep_mps: STEP_MPS,
  speeds: SPEEDS,
  air_K: overSpeed(air_K),
  face: overWalls('face'),
  vane: overWalls('vane'),
  rim: overWalls('rim'),
  bell: overWalls('bell'),
  caliper: overWalls('caliper'),
  wheelhouse: overSpeed(driven),
  wheelhouseBuoyant: buoyant,
  radiationKept: kept,
  recirculated: overSpeed(recirculated),
  faceInWheelhouse: onFace,
  sprayFace_W: overSpeed((v) => 500 + 10 * v),
  sprayVane_W: overSpeed((v) => 200 + 3 * v),
};

/** All nodes apart; the surfaces none of them on the grid of walls. */
const apart = temperatures(
  (i) => ({ [rim]: 610, [bell]: 455, [caliper]: 375, [face]: 812, [wall]: 733 })[i] ?? 500 + i,
);

describe('what the surfaces of a corner lose at a moment', () => {
  const stepper = bareAt(apart);
  Object.assign(stepper, { bridge_WpK4: 3e-10, hub_WpK: 1.7, mount_WpK: 2.3 });
  stepper.radiation.set([2e-9, 5e-10, 7e-10, 9e-10, 4e-10]);
  const T = nodeTemperatures(stepper);
  const ambient_K = air_K(SPEED);
  const names = ['face', 'vane', 'rim', 'bell', 'caliper'] as const;
  const nodes: number[] = [face, wall, rim, bell, caliper];
  const meets = [onFace, recirculated(SPEED), 1, 1, 1];
  const over = nodes.map((node) => T[node]! - ambient_K);
  const g = names.map((name, j) => lineAt(name, SPEED, T[nodes[j]!]!));
  const radiated = nodes.map((node, j) => stepper.radiation[j]! * (T[node]! ** 4 - ambient_K ** 4));
  const sum = (values: number[]): number => values.reduce((all, value) => all + value, 0);
  const offered = sum(g.map((each, j) => each * over[j]!)) + kept * sum(radiated);
  const warmth = riseWheelhouse(offered, sum(g.map((each, j) => each * meets[j]!)), driven(SPEED), buoyant);
  const toAir = g.map((each, j) => each * (over[j]! - meets[j]! * warmth));
  const spray = [850 * Math.tanh(over[0]! / 80), 305 * Math.tanh(over[1]! / 80), 0, 0, 0];
  const conducted = [0, 0, 0, 1.7 * over[3]!, 2.3 * over[4]!];
  const bridged = 3e-10 * (T[rim]! ** 4 - T[caliper]! ** 4);
  const bridge = [0, 0, bridged, 0, -bridged];
  const { gained, booked, columns } = step(stepper, sprayed, INSTANT_S);

  it.each(nodes.map((node, j) => [names[j], node, j] as const))(
    'is the sum of what is taken, at the %s',
    (_, node, j) => {
      const lost_W = toAir[j]! + radiated[j]! + spray[j]! + conducted[j]! + bridge[j]!;
      expect(gained[node]! / -lost_W).toBeCloseTo(1, 4);
    },
  );

  it('is nothing anywhere else', () => {
    gained.forEach((gain, node) => nodes.includes(node) || expect(gain).toBe(0));
  });

  it('is booked by kind', () => {
    expect(booked[BOOK.faceAir]! / toAir[0]!).toBeCloseTo(1, 4);
    expect(booked[BOOK.vaneAir]! / toAir[1]!).toBeCloseTo(1, 4);
    expect(booked[BOOK.otherAir]! / (toAir[2]! + toAir[3]! + toAir[4]! + sum(spray))).toBeCloseTo(1, 4);
    expect(booked[BOOK.radiation]! / sum(radiated)).toBeCloseTo(1, 4);
    expect(booked[BOOK.conducted]! / sum(conducted)).toBeCloseTo(1, 4);
    expect(booked[BOOK.brakeHeat]).toBe(0);
  });

  it('warms the wheelhouse to what its columns say', () => {
    expect(columns.wheelhouse_K[0]! - ambient_K - warmth).toBeCloseTo(0, 3);
  });

  it('has no spray where a surface is colder than the air', () => {
    const cold = bareAt(temperatures(() => 280));
    const still = { ...stillMap(), sprayFace_W: overSpeed(() => 500), sprayVane_W: overSpeed(() => 500) };
    expect([...step(cold, still, INSTANT_S).gained].map(Math.abs)).toEqual(new Array(NODES).fill(0));
  });

  it('beyond the grid of speed goes on as at its end', () => {
    const slow = { ...sprayed, speedStep_mps: 5 };
    const { booked: beyond } = step(bareAt(apart), { ...slow, wheelhouse: overSpeed(() => 1e12) }, INSTANT_S);
    const end = lines.face[0] + lines.face[1] * (SPEED * 2) + lines.face[2] * T[face]!;
    expect(beyond[BOOK.faceAir]! / (end * (T[face]! - air_K(SPEED * 2)))).toBeCloseTo(1, 4);
  });

  it('beyond the grid of walls goes on in a straight line above and stays where it is below', () => {
    const far = bareAt(temperatures((i) => (i === face ? 1560 : i === wall ? 232 : 500)));
    const T = nodeTemperatures(far);
    const open = { ...sprayed, wheelhouse: overSpeed(() => 1e12) };
    const { booked: there } = step(far, open, INSTANT_S);
    expect(there[BOOK.faceAir]! / (lineAt('face', SPEED, T[face]!) * (T[face]! - ambient_K))).toBeCloseTo(
      1,
      4,
    );
    expect(there[BOOK.vaneAir]! / (lineAt('vane', SPEED, WALL_LOW_K) * (T[wall]! - ambient_K))).toBeCloseTo(
      1,
      4,
    );
  });
});

describe('what moves inside a corner at a moment', () => {
  /** ∫ k dT of the disc's material between two temperatures [W/m] */
  const potentialFrom = (low_K: number, high_K: number): number => {
    const { [spec.disc.material]: iron } = materials;
    const at = (T: number): number => valueAtTemperature(iron, iron.conductivity, T);
    return ((high_K - low_K) / 6) * (at(low_K) + 4 * at((low_K + high_K) / 2) + at(high_K));
  };

  it.each([0, 1])('is what the links carry, pads pressed: %d', (pressed) => {
    const stepper = cornerAt(temperatures((i) => 500 + 17 * ((5 * i) % NODES)));
    const { link, pressed_WpK } = stepper.network;
    const own = Object.assign(bareAt([...nodeTemperatures(stepper)]), { network: stepper.network });
    const T = nodeTemperatures(own);
    const expected = new Float64Array(NODES);
    for (const [from, to] of links) {
      const drop = isCast(from) ? potentialFrom(T[to]!, T[from]!) : T[from]! - T[to]!;
      const flux = (pressed && from === padFace ? pressed_WpK : link[from]!) * drop;
      expected[from]! -= flux;
      expected[to]! += flux;
    }
    const { gained } = step(own, stillMap(), INSTANT_S, { pressed });
    gained.forEach((gain, node) => expect(gain / expected[node]!, `node ${node}`).toBeCloseTo(1, 2));
  });
});

describe('the tangents of a first stage', () => {
  // a wheelhouse that never warms: how its warmth follows the corner is what the tangents leave out
  const summed: [name: string, node: number, slopes: number[]][] = [
    ['face: air, radiation, spray', face, [0, 5, 12]],
    ['vanes: air, radiation, spray', wall, [1, 6, 13]],
    ['rim: air, radiation', rim, [2, 7]],
    ['bell: air, radiation, hub', bell, [3, 8, 10]],
    ['caliper: air, radiation, upright', caliper, [4, 9, 11]],
  ];

  it.each(summed)('are how the losses grow with heat, at the %s', (_, node, slopes) => {
    const stepper = bareAt(temperatures((i) => (i === face ? 385 : i === wall ? 365 : 350)));
    Object.assign(stepper, { hub_WpK: 1.7, mount_WpK: 2.3 });
    stepper.radiation.set([2e-9, 5e-10, 7e-10, 9e-10, 4e-10]);
    const { hold, setAir, evaluate, H, F, slope } = makeRates();
    hold(stepper, { ...sprayed, wheelhouse: overSpeed(() => 1e12) });
    setAir(Float64Array.of(SPEED), 0);
    evaluate(true);
    const tangent = slopes.reduce((sum, i) => sum + slope[i]!, 0);
    const before_W = F[node]!;
    const more_J = 1e-3 * stepper.network.mass_kg[node]! * 500;
    H[node]! += more_J;
    evaluate(false);
    expect((before_W - F[node]!) / more_J / tangent).toBeCloseTo(1, 3);
  });
});

it('a node above the end of the tables goes on in a straight line', () => {
  const T = nodeTemperatures(cornerAt(temperatures(() => 1750)));
  T.forEach((one) => expect(one).toBeCloseTo(1750, 6));
});
