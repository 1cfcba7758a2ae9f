/** The air of a corner by hand at the mean speed of a lap: what it brings, and what the disc gives to it. */
import { bellConductance, outsideReynolds } from '../../disc/body-convection.ts';
import type { CornerSpec } from '../../disc/corner-spec.ts';
import {
  faceCoefficients,
  faceConductance,
  rimConductance,
  turningFace,
} from '../../disc/face-convection.ts';
import { materials } from '../../disc/materials.ts';
import { blendConvection } from '../../disc/nusselt-face.ts';
import { filmOf } from '../../disc/outside-air.ts';
import { radiationOf } from '../../disc/radiation.ts';
import { vanePassage } from '../../disc/vane-passage.ts';
import { STEFAN_BOLTZMANN } from '../../disc/view-factor.ts';
import type { AirPathGeometry } from '../../duct/air-path.ts';
import type { HandAir } from './hand-air.ts';
import { ductByHand } from './duct-by-hand.ts';
import { of, type HandLine } from './hand-line.ts';
import { padsByHand } from './pads-by-hand.ts';
import { vanesByHand } from './vanes-by-hand.ts';

export function airByHand(
  spec: CornerSpec,
  geometry: AirPathGeometry,
  at: HandAir,
): { lines: HandLine[]; all_WpK: number } {
  const { day, speed_mps, disc_K, air_K, cooling } = at;
  const lines: HandLine[] = geometry.mouthArea_m2 > 0 ? ductByHand(geometry, at) : [];
  const passage = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3);
  const vanes = passage ? vanesByHand(spec, passage, at) : { lines: [], vanes_WpK: 0 };
  lines.push(...vanes.lines);
  const wash_mps =
    spec.leakArea_m2 > 0 ? Math.max(at.leak_kgps, 0) / (day.density_kgpm3 * spec.leakArea_m2) : 0;
  const outside = { speed_mps, wash_mps, air_K, pressure_Pa: day.pressure_Pa };
  const Re = outsideReynolds(spec, outside, disc_K);
  const film = filmOf(spec, outside, disc_K);
  const faces = faceCoefficients(spec, outside, disc_K);
  const h = (faces.outer + faces.inner) / 2;
  const h_turning = blendConvection(turningFace(film, spec.disc.outer_m / 2), spec.wheel.still);
  const faces_WpK = cooling * faceConductance(spec, outside, disc_K);
  const [face = 0, openings = 0, edge = 0] = radiationOf(spec);
  const radiating_WpK4 = face + openings + edge;
  const radiation_WpK = radiating_WpK4 * (disc_K ** 2 + air_K ** 2) * (disc_K + air_K);
  const corrected = cooling === 1 ? [] : [of('F', 'number', cooling, 'the scenario’s cooling correction')];
  lines.push(
    {
      what: 'What both faces give to the air that passes and that they turn, mean of both',
      equation: cooling === 1 ? 'G = h A,  h³ = hₜ³ + hₚ³' : 'G = F h A,  h³ = hₜ³ + hₚ³',
      given: [
        of('hₜ', 'coefficient', h_turning, `turning, Re\u00a0${inThousands(Re.rotation)}`),
        of(
          'hₚ',
          'coefficient',
          Math.cbrt(h ** 3 - h_turning ** 3),
          `passing, Re\u00a0up\u00a0to\u00a0${inThousands(Re.passing)}`,
        ),
        of('A', 'area', faces_WpK / (cooling * h), 'both faces but for the pads’ shadow'),
        ...corrected,
      ],
      found: of('G', 'conductance', faces_WpK),
      model: null,
      source: 'Cobb & Saunders 1956 (from memory); Limpert, SAE 751014 (read in copies)',
      check: 'rotating-disc',
    },
    {
      what: 'What faces, vane openings and edge radiate, per kelvin',
      equation: 'G = εA σ (T² + T₀²)(T + T₀), T in kelvin',
      given: [
        of('εA', 'area', radiating_WpK4 / STEFAN_BOLTZMANN, `as black${correctedBy(at.emissivity)}`),
        of('σ', 'radiation constant', STEFAN_BOLTZMANN),
        of('T', 'temperature', disc_K, 'bulk, lap’s mean'),
        of('T₀', 'temperature', air_K, 'air'),
      ],
      found: of('G', 'conductance', radiation_WpK),
      model: null,
      source: 'Stefan-Boltzmann; views of ring and wheel by their geometry',
      check: 'ring-view-factor',
    },
  );
  const rim_WpK = cooling * rimConductance(spec, outside, disc_K);
  const beyondJoint_WpK = cooling * bellConductance(spec, outside, disc_K) + spec.bell.hub_WpK;
  const other_WpK = rim_WpK + inSeries(spec.bell.joint_WpK, beyondJoint_WpK);
  lines.push({
    what: 'What the edge gives to the air, and what goes through the joint into bell and hub',
    equation: 'G = G₁ + 1/(1/G₂ + 1/G₃)',
    given: [
      of('G₁', 'conductance', rim_WpK, 'edge to air'),
      of('G₂', 'conductance', spec.bell.joint_WpK, 'joint'),
      of('G₃', 'conductance', beyondJoint_WpK, 'bell to air, and hub'),
    ],
    found: of('G', 'conductance', other_WpK),
    model: null,
    source: 'turning cylinder and plate; joint and hub from the scenario',
    check: 'flat-plate',
  });
  const pads = padsByHand(spec, outside, at);
  lines.push(pads.line);
  const all_WpK = vanes.vanes_WpK + faces_WpK + radiation_WpK + other_WpK + pads.pads_WpK;
  return { lines, all_WpK };
}

const correctedBy = (emissivity: number): string =>
  emissivity === 1 ? '' : `, the scenario’s emissivity correction of ${emissivity} in it`;

/** "250 000", to two digits. */
const inThousands = (Re: number): string =>
  String(Number(Re.toPrecision(2))).replace(/\B(?=(\d{3})+(?!\d))/g, '\u00a0');

const inSeries = (a: number, b: number): number => (a > 0 && b > 0 ? (a * b) / (a + b) : 0);
