/** The vanes of a corner by hand: from the flow in them to what they give to it. */
import { conductivityAir, prandtlAir, viscosityAir } from '../../air/dry-air.ts';
import type { CornerSpec } from '../../disc/corner-spec.ts';
import {
  enhancementRotation,
  exponentRoughVanes,
  nusseltVanePassage,
  nusseltVanes,
} from '../../disc/nusselt-vane.ts';
import { reynoldsFlow, rotationNumber, vaneConductance, vaneConvection } from '../../disc/vane-convection.ts';
import type { VanePassage } from '../../disc/vane-passage.ts';
import type { HandAir } from './hand-air.ts';
import { of, type HandLine } from './hand-line.ts';

/** Where the enhancement of a passage is defined [-] */
const REFERENCE_RE = 1e4;

export function vanesByHand(
  { disc, wheel }: CornerSpec,
  passage: VanePassage,
  at: HandAir,
): { lines: HandLine[]; vanes_WpK: number } {
  const { air_K, disc_K, day, cooling } = at;
  const film_K = (disc_K + air_K) / 2;
  const flow_kgps = Math.abs(at.vane_kgps);
  const inside = {
    vane_kgps: flow_kgps,
    wheel_radps: at.speed_mps / wheel.loadedRadius_m,
    wall_K: disc_K,
    air_K,
    density_kgpm3: day.density_kgpm3,
    still: wheel.still,
  };
  const d = passage.hydraulicDiameter_m;
  const d_L = d / passage.length_m;
  const Pr = prandtlAir(film_K);
  const Re = reynoldsFlow({ kgps: flow_kgps, area_m2: passage.flowArea_m2, film_K }, d);
  const rotation = enhancementRotation(rotationNumber(passage, inside));
  const { wall, vane, wetted_WpK, flow_WpK } = vaneConvection(disc, passage, inside);
  const k = conductivityAir(film_K);
  const vanes_WpK = cooling * vaneConductance(disc, passage, inside);
  const isPillars = passage.pillar_m !== null;
  const laminar = nusseltVanes(Re, Pr, { diameterOverLength: d_L, enhancement: 0 });
  const smooth = nusseltVanePassage(REFERENCE_RE, Pr, d_L);
  const lines: HandLine[] = [
    {
      what: 'Reynolds number of the vane passages',
      equation: 'Re = (ṁ/A) d / μ',
      given: [
        of('ṁ', 'flow', flow_kgps, 'through all vanes'),
        of('A', 'area', passage.flowArea_m2, 'all passages'),
        of('d', 'length', d, 'hydraulic diameter'),
        of('μ', 'viscosity', viscosityAir(film_K), 'of the film'),
      ],
      found: of('Re', 'number', Re),
      model: null,
      source: 'definition; μ of the film, U.S. Standard Atmosphere 1976',
      check: 'air-table',
    },
    {
      what: 'Nusselt number on their walls: what a smooth tube has, and what casting, turn and rotation add',
      equation: 'Nu⁶ = Nu₁⁶ + (E R Nu₂ (Re/10\u00a0000)ᵐ)⁶',
      given: [
        of('Nu₁', 'number', laminar, 'laminar'),
        of('E', 'number', disc.vaneEnhancement, 'the scenario’s enhancement'),
        of('R', 'number', rotation, 'rotation'),
        of('Nu₂', 'number', smooth, 'smooth tube at Re\u00a010\u00a0000'),
        of('m', 'number', exponentRoughVanes(Pr), 'exponent of rough walls'),
      ],
      found: of('Nu', 'number', (wall * d) / k, 'heat transfer over conduction'),
      model: null,
      source: 'Hausen, Gnielinski; growth with speed calibrated to McPhee & Johnson 2008',
      check: 'vane-passage',
    },
    {
      what: isPillars
        ? 'Coefficient on the cheeks, and with the pillars’ own all that is wetted'
        : 'Coefficient on the walls, and with the vanes as fins all that is wetted',
      equation: isPillars ? 'h = Nu k/d,  H = h A₁ + h₂ A₂' : 'h = Nu k/d,  H = h (A₁ + A₂)',
      given: [
        of('k', 'conductivity', k, 'of the film'),
        of('h', 'coefficient', wall),
        of('A₁', 'area', passage.wallArea_m2, 'cheeks'),
        ...(isPillars ? [of('h₂', 'coefficient', vane, 'cylinders across the flow')] : []),
        of(
          'A₂',
          'area',
          (wetted_WpK - wall * passage.wallArea_m2) / vane,
          isPillars ? 'pillars times fin efficiency' : 'vanes times fin efficiency',
        ),
      ],
      found: of('H', 'conductance', wetted_WpK),
      model: null,
      source: 'definition; fins of Incropera & DeWitt, 3.6',
      check: 'vane-fin',
    },
    {
      what: 'What the vanes give to their air, which warms on its way',
      equation: cooling === 1 ? 'G = ṁc (1 − exp(−H/ṁc))' : 'G = F ṁc (1 − exp(−H/ṁc))',
      given: [
        of('ṁc', 'conductance', flow_WpK, 'flow times heat capacity'),
        of('H', 'conductance', wetted_WpK),
        ...(cooling === 1 ? [] : [of('F', 'number', cooling, 'the scenario’s cooling correction')]),
      ],
      found: of('G', 'conductance', vanes_WpK),
      model: null,
      source: 'Incropera & DeWitt, 8.3; what still air adds is below a thousandth',
      check: 'warming-air',
    },
  ];
  return { lines, vanes_WpK };
}
