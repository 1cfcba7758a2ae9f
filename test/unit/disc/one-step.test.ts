import { describe, expect, it } from 'vitest';
import type { ConductanceMap } from '../../../engine/disc/conductance-map.ts';
import { CHEEK, NODE } from '../../../engine/disc/network.ts';
import { coefficientBridge, radiationOf } from '../../../engine/disc/radiation.ts';
import { BOOK, createStepper, nodeTemperatures, type Stepper } from '../../../engine/disc/stepper.ts';
import { WALLS } from '../../../engine/disc/wall-grid.ts';
import { drivenSlab, evenSteps, ROOM_K, stillMap } from '../../support/bare-slab.ts';
import { bareAt, cornerAt, links, spec, SPEED, step, temperatures } from '../../support/one-corner.ts';

const LONG_S = 10;
const { rim, bell, fluid, caliper, plate, pad, padFace, face, wall } = NODE;

describe('heat made in a step', () => {
  it('goes by its share into disc and pad, that of dragging pads too, whatever the length of the step', () => {
    for (const dt of [0.01, LONG_S]) {
      const stepper = Object.assign(bareAt(temperatures(() => 400)), { drag_N: 6, discShare: 0.93 });
      const { gained, booked } = step(stepper, stillMap(), dt, { start: 1000, end: 3000 });
      const made_W = 2000 + 6 * SPEED;
      expect(booked[BOOK.brakeHeat]!).toBeCloseTo(made_W, 6);
      expect(gained[face]!).toBeCloseTo(0.93 * made_W, 5);
      expect(gained[padFace]!).toBeCloseTo(0.07 * made_W, 5);
    }
  });
});

// Without the cut the first ends 30 K off, and the second where only one way of bending is watched.
describe.each([
  [960, 9e5, 1e5],
  [940, 2e5, 2e5],
])('a step that is cut because iron of %d K transforms under %d to %d W', (from_K, start, end) => {
  const hot = (): Stepper => {
    const { network } = cornerAt(temperatures(() => from_K));
    return Object.assign(bareAt(temperatures(() => from_K)), { network, discShare: 1 });
  };
  const whole = hot();
  const { gained, booked } = step(whole, stillMap(), 1, { start, end });

  it('makes the heat of the whole step, once', () => {
    expect(booked[BOOK.brakeHeat]!).toBeCloseTo((start + end) / 2, 4);
    expect(gained.reduce((sum, W) => sum + W, 0)).toBeCloseTo((start + end) / 2, 4);
  });

  it('ends where 512 short steps end', () => {
    const power = {
      at: (t: number) => start + (end - start) * t,
      sum: (t: number) => start * t + ((end - start) * t * t) / 2,
    };
    const fine = hot();
    drivenSlab(fine, evenSteps(1, 512, power), stillMap());
    const T = nodeTemperatures(whole);
    nodeTemperatures(fine).forEach((exact, i) =>
      expect(Math.abs(T[i]! - exact), `node ${i}`).toBeLessThan(1.5),
    );
  });
});

describe('one long step, however strong the exchange', () => {
  const ends: [name: string, node: number, strengthen: (stepper: Stepper) => ConductanceMap][] = [
    ...(
      [
        ['face', face],
        ['vane', wall],
        ['rim', rim],
        ['bell', bell],
        ['caliper', caliper],
      ] as const
    ).flatMap(([name, node], j): typeof ends => [
      [`air at the ${name}`, node, () => ({ ...stillMap(), [name]: new Float64Array(2 * WALLS).fill(1e5) })],
      [
        `radiation of the ${name}`,
        node,
        (stepper) => {
          stepper.radiation[j] = 1e-4;
          return stillMap();
        },
      ],
    ]),
    ['the hub', bell, (stepper) => (Object.assign(stepper, { hub_WpK: 1e5 }), stillMap())],
    ['the upright', caliper, (stepper) => (Object.assign(stepper, { mount_WpK: 1e5 }), stillMap())],
  ];

  it.each(ends)('brings a surface to its surroundings and not past them, by %s', (_, node, strengthen) => {
    const stepper = bareAt(temperatures(() => ROOM_K + 0.5));
    const map = strengthen(stepper);
    const { gained, booked } = step(stepper, map, LONG_S);
    expect(Math.abs(nodeTemperatures(stepper)[node]! - ROOM_K)).toBeLessThan(0.1);
    expect(booked.reduce((sum, W) => sum + W, 0)).toBeCloseTo(-gained[node]!, 6);
  });

  it.each(links)('evens out two nodes that touch: %d and %d', (from, to) => {
    const stepper = bareAt(temperatures((i) => (i === from ? 502 : 500)));
    stepper.network.link[from] = 1e5;
    const { gained } = step(stepper, stillMap(), LONG_S);
    const T = nodeTemperatures(stepper);
    expect(Math.abs(T[from]! - T[to]!)).toBeLessThan(0.1);
    expect(gained[from]!).toBeCloseTo(-gained[to]!, 5);
  });
});

describe('the columns', () => {
  it('hold each node at the end of the step, and the cheek by its heat', () => {
    const stepper = cornerAt(temperatures((i) => 500 + 17 * ((5 * i) % 14)));
    const { columns } = step(stepper, stillMap(40, 60), 0.5, { start: 2e5, end: 1e5, pressed: 1 });
    const T = nodeTemperatures(stepper);
    const { mass_kg } = stepper.network;
    const nodes = { face, wall, rim, bell, pad: padFace, caliper, fluid } as const;
    for (const [name, node] of Object.entries(nodes)) {
      expect(columns[`${name}_K` as keyof typeof columns][0], name).toBeCloseTo(T[node]!, 9);
    }
    const of = (value: (i: number) => number): number => CHEEK.reduce((sum, node) => sum + value(node), 0);
    expect(columns.cheek_K[0]).toBeCloseTo(of((i) => mass_kg[i]! * T[i]!) / of((i) => mass_kg[i]!), 9);
  });
});

describe('a corner begins', () => {
  it('with disc, pads and caliper each at its own temperature', () => {
    const T = nodeTemperatures(createStepper(spec, { disc_K: 700, pad_K: 500, caliper_K: 380 }));
    const expected = (i: number): number =>
      i === caliper || i === fluid ? 380 : i === plate || i === pad || i === padFace ? 500 : 700;
    T.forEach((one, i) => expect(one).toBeCloseTo(expected(i), 9));
  });

  it('with its bell on the hub, its caliper on the upright, and the radiation of its surfaces', () => {
    const stepper = createStepper(spec, { disc_K: 700, pad_K: 500, caliper_K: 380 });
    expect(stepper.hub_WpK).toBe(spec.bell.hub_WpK);
    expect(stepper.mount_WpK).toBe(spec.caliper.mount_WpK);
    expect(stepper.bridge_WpK4).toBe(coefficientBridge(spec));
    expect(stepper.radiation).toEqual(radiationOf(spec));
  });
});
