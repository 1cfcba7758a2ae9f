/** The way of the heat through pads and caliper by hand: links in a row, each as the model has it. */
import { caliperConductance } from '../../disc/body-convection.ts';
import type { CornerSpec } from '../../disc/corner-spec.ts';
import { buildNetwork, NODE } from '../../disc/network.ts';
import type { OutsideAir } from '../../disc/outside-air.ts';
import type { HandAir } from './hand-air.ts';
import { of, type HandLine } from './hand-line.ts';

/** A caliper stands nearer to the air than to the disc: its air is taken at a film this much above ambient. From memory [K] */
const CALIPER_ABOVE_K = 100;

export function padsByHand(
  spec: CornerSpec,
  outside: OutsideAir,
  { cooling, pressedShare }: HandAir,
): { line: HandLine; pads_WpK: number } {
  const { link, pressed_WpK } = buildNetwork(spec);
  const contact_WpK = pressedShare * pressed_WpK + (1 - pressedShare) * link[NODE.padFace]!;
  const through_WpK = 1 / (1 / link[NODE.pad]! + 1 / link[NODE.plate]! + 1 / link[NODE.caliper]!);
  const out_WpK =
    cooling * caliperConductance(spec, outside, outside.air_K + CALIPER_ABOVE_K) + spec.caliper.mount_WpK;
  const pads_WpK = 1 / (1 / contact_WpK + 1 / through_WpK + 1 / out_WpK);
  const line: HandLine = {
    what: 'What goes through pads and caliper',
    equation: 'G = 1/(1/G₁ + 1/G₂ + 1/G₃)',
    given: [
      of('G₁', 'conductance', contact_WpK, 'pads pressed or over their gap, by time'),
      of('G₂', 'conductance', through_WpK, 'pads, plates and pistons'),
      of('G₃', 'conductance', out_WpK, 'caliper to air and upright'),
    ],
    found: of('G', 'conductance', pads_WpK),
    model: null,
    source: 'resistances in series; contact and pistons as in the scenario or from memory',
    check: null,
  };
  return { line, pads_WpK };
}
