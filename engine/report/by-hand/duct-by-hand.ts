/** The duct of a corner by hand: what the air brings, what the mouth takes, and what comes through. */
import type { AirPathGeometry } from '../../duct/air-path.ts';
import { ductLossFreeArea } from '../../duct/duct-resistance.ts';
import { conductanceMouth, thickEdge } from '../../duct/loss-perforated.ts';
import type { HandAir } from './hand-air.ts';
import { of, type HandLine } from './hand-line.ts';

export function ductByHand(geometry: AirPathGeometry, at: HandAir): HandLine[] {
  const { openFraction, duct_kgps } = at;
  const { density_kgpm3 } = at.day;
  const ram_Pa = (at.qRatio * density_kgpm3 * at.speed_mps ** 2) / 2;
  const before_Pa = geometry.recovery * ram_Pa;
  const lossFree_m2 = ductLossFreeArea(geometry, openFraction);
  const over_Pa =
    lossFree_m2 > 0
      ? ((duct_kgps / lossFree_m2) ** 2 * Math.sign(duct_kgps)) / (2 * density_kgpm3)
      : before_Pa;
  return [
    {
      what: 'Dynamic pressure of the air that the car meets, at the lap’s mean speed',
      equation: 'q = ½ ρ V² r',
      given: [
        of('ρ', 'density', density_kgpm3),
        of('V', 'speed', at.speed_mps),
        of('r', 'number', at.qRatio, ratioName(at.behind)),
      ],
      found: of('q', 'pressure', ram_Pa),
      model: null,
      source: 'Bernoulli; moist air by ASHRAE Fundamentals 2017',
      check: 'moist-air',
    },
    mouthByHand(geometry, openFraction),
    {
      what: 'Air through the duct; how the pressure parts between duct, vanes and leak is the model’s balance',
      equation: 'ṁ = A √(2 ρ Δp)',
      given: [
        of('A', 'area', lossFree_m2, 'free of loss, mouth to disc in series'),
        of('ρ', 'density', density_kgpm3),
        of(
          'Δp',
          'pressure',
          over_Pa,
          `from ${whole(before_Pa)}\u00a0Pa before the mouth to ${whole(before_Pa - over_Pa)}\u00a0Pa behind the disc`,
        ),
      ],
      found: of('ṁ', 'flow', duct_kgps),
      model: null,
      source: 'conservation of mass; losses of Idelchik and of Rennels & Hudson',
      check: 'air-network',
    },
  ];
}

function mouthByHand({ mouthArea_m2, blankDepth }: AirPathGeometry, openFraction: number): HandLine {
  const isPerforated = blankDepth !== undefined;
  return {
    what: 'Loss of the blanked mouth, in dynamic pressures of the whole mouth',
    equation: isPerforated ? 'ζ = (½ + τ (1 − f) + (1 − f)²) / f²' : 'ζ = (1.707 − f)² / f²',
    given: [
      of('f', 'share', openFraction, 'open'),
      ...(isPerforated
        ? [of('τ', 'number', thickEdge(blankDepth), 'for a plate as thick beside its holes')]
        : []),
      of('A', 'area', mouthArea_m2, 'the whole mouth'),
    ],
    found: of('ζ', 'number', conductanceMouth(openFraction, blankDepth) ** -2),
    model: null,
    source: isPerforated
      ? 'thick-edged openings by Idelchik, diagram 4-12, as a Modelica library has it; not validated over a mouth'
      : 'general orifice form of Idelchik (from memory; its limits are tested)',
    check: isPerforated ? null : 'blanked-mouth',
  };
}

function ratioName(behind: number): string {
  if (behind === 0) return 'over clear air’s: no car ahead';
  const share = behind === 1 ? 'all the time' : `${whole(100 * behind)}\u00a0% of the time at this speed`;
  return `over clear air’s: behind the car ahead ${share}`;
}

const whole = (value: number): string => String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, '\u00a0');
