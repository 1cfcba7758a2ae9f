/** The air of a corner by hand at the mean speed of a lap: what it brings, and what face and vanes give to it. */
import { prandtlAir } from '../../air/dry-air.ts';
import type { CornerSpec } from '../../disc/corner-spec.ts';
import { bellConductance, outsideReynolds } from '../../disc/body-convection.ts';
import { faceConductance, rimConductance } from '../../disc/face-convection.ts';
import { materials } from '../../disc/materials.ts';
import { nusseltVanePassage } from '../../disc/nusselt-vane.ts';
import { radiationOf } from '../../disc/radiation.ts';
import { reynoldsFlow, vaneConductance } from '../../disc/vane-convection.ts';
import { vanePassage } from '../../disc/vane-passage.ts';
import type { AirPathGeometry } from '../../duct/air-path.ts';
import { lossBlankedMouth } from '../../duct/loss-mouth.ts';
import type { Day } from '../../stint/day.ts';
import { of, type HandLine } from './hand-line.ts';

export interface HandAir {
  speed_mps: number;
  /** Bulk of the disc over the lap, at which its surfaces are taken [K] */
  disc_K: number;
  day: Day;
  openFraction: number;
  /** Dynamic pressure at the mouth over that of clear air [-] */
  qRatio: number;
  duct_kgps: number;
  vane_kgps: number;
  leak_kgps: number;
  cooling: number;
}

/** Conductances at that speed and temperature [W/K] */
export interface HandConductances {
  vanes_WpK: number;
  faces_WpK: number;
  radiation_WpK: number;
  edgeAndBell_WpK: number;
}

export function airByHand(
  spec: CornerSpec,
  geometry: AirPathGeometry,
  at: HandAir,
): { lines: HandLine[]; conductances: HandConductances } {
  const { day, speed_mps, disc_K } = at;
  const lines: HandLine[] = [];
  const ram_Pa = (at.qRatio * day.density_kgpm3 * speed_mps ** 2) / 2;
  if (geometry.mouthArea_m2 > 0) lines.push(...ductLines(geometry, at, ram_Pa));
  const passage = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3);
  const film_K = (disc_K + day.ambient_K) / 2;
  let vanes_WpK = 0;
  if (passage) {
    const through = { kgps: Math.abs(at.vane_kgps), area_m2: passage.flowArea_m2, film_K };
    const Re = reynoldsFlow(through, passage.hydraulicDiameter_m);
    const tube = nusseltVanePassage(Re, prandtlAir(film_K), passage.hydraulicDiameter_m / passage.length_m);
    vanes_WpK =
      at.cooling *
      vaneConductance(spec.disc, passage, {
        vane_kgps: Math.abs(at.vane_kgps),
        wheel_radps: speed_mps / spec.wheel.loadedRadius_m,
        wall_K: disc_K,
        air_K: day.ambient_K,
        density_kgpm3: day.density_kgpm3,
        still: spec.wheel.still,
      });
    lines.push(
      {
        what: 'Reynolds number of the vane passages',
        equation: 'Re = (ṁ/A) d / μ',
        given: [
          of('ṁ', 'flow', Math.abs(at.vane_kgps)),
          of('A', 'area', passage.flowArea_m2),
          of('d', 'length', passage.hydraulicDiameter_m),
        ],
        found: of('Re', 'number', Re),
        model: null,
        source: 'definition; μ of the film, U.S. Standard Atmosphere 1976',
        check: 'air-table',
      },
      {
        what: 'What the vanes give to their air, smooth tube’s Nusselt number times what casting, turn and rotation add',
        equation: 'G = ṁ c (1 − e^(−ΣhA/ṁc))',
        given: [
          of('Nu, smooth', 'number', tube),
          of('factor at Re 10 000', 'number', spec.disc.vaneEnhancement),
        ],
        found: of('G', 'conductance', vanes_WpK),
        model: null,
        source: 'Hausen, Gnielinski; growth with speed calibrated to McPhee & Johnson 2008',
        check: 'vane-passage',
      },
    );
  }
  const wash_mps =
    spec.leakArea_m2 > 0 ? Math.max(at.leak_kgps, 0) / (day.density_kgpm3 * spec.leakArea_m2) : 0;
  const outside = { speed_mps, wash_mps, air_K: day.ambient_K, pressure_Pa: day.pressure_Pa };
  const Re = outsideReynolds(spec, outside, disc_K);
  const faces_WpK = at.cooling * faceConductance(spec, outside, disc_K);
  const [face = 0, openings = 0] = radiationOf(spec);
  const hot2 = disc_K ** 2;
  const cold2 = day.ambient_K ** 2;
  const radiation_WpK = (face + openings) * (hot2 + cold2) * (disc_K + day.ambient_K);
  lines.push(
    {
      what: 'What both faces give to the air that passes and that they turn',
      equation: 'h³ = h_turning³ + h_passing³',
      given: [of('Re, turning', 'number', Re.rotation), of('Re, passing', 'number', Re.passing)],
      found: of('G', 'conductance', faces_WpK),
      model: null,
      source: 'Cobb & Saunders 1956 (from memory); Limpert, SAE 751014 (read in copies)',
      check: 'rotating-disc',
    },
    {
      what: 'What faces and vane openings radiate, per kelvin',
      equation: 'G = ε A σ (T² + T₀²)(T + T₀)',
      given: [of('T', 'temperature', disc_K), of('T₀', 'temperature', day.ambient_K)],
      found: of('G', 'conductance', radiation_WpK),
      model: null,
      source: 'Stefan-Boltzmann; views of ring and wheel by their geometry',
      check: 'ring-view-factor',
    },
  );
  const rim_WpK = at.cooling * rimConductance(spec, outside, disc_K);
  const beyondJoint_WpK = at.cooling * bellConductance(spec, outside, disc_K) + spec.bell.hub_WpK;
  const bell_WpK = inSeries(spec.bell.joint_WpK, beyondJoint_WpK);
  lines.push({
    what: 'What the edge gives to the air, and what goes through the joint into bell and hub',
    equation: 'G = G_edge + 1/(1/G_joint + 1/(G_bell + G_hub))',
    given: [
      of('G_edge', 'conductance', rim_WpK),
      of('G_joint', 'conductance', spec.bell.joint_WpK),
      of('G_bell + G_hub', 'conductance', beyondJoint_WpK),
    ],
    found: of('G', 'conductance', rim_WpK + bell_WpK),
    model: null,
    source: 'turning cylinder and plate; joint and hub from the scenario',
    check: 'flat-plate',
  });
  return {
    lines,
    conductances: { vanes_WpK, faces_WpK, radiation_WpK, edgeAndBell_WpK: rim_WpK + bell_WpK },
  };
}

function ductLines(geometry: AirPathGeometry, at: HandAir, ram_Pa: number): HandLine[] {
  const isOpen = at.openFraction > 0;
  return [
    {
      what: 'Dynamic pressure of the air that the car meets, at the lap’s mean speed',
      equation: 'q = ½ ρ V² · (q/q∞)',
      given: [
        of('ρ', 'density', at.day.density_kgpm3),
        of('V', 'speed', at.speed_mps),
        of('q/q∞', 'number', at.qRatio),
      ],
      found: of('q', 'pressure', ram_Pa),
      model: null,
      source: 'Bernoulli; moist air by ASHRAE Fundamentals 2017',
      check: 'moist-air',
    },
    {
      what: 'Loss of the blanked mouth, in dynamic pressures of the whole mouth',
      equation: 'ζ = (1.707 − f)² / f²',
      given: [of('f', 'share', at.openFraction), of('A', 'area', geometry.mouthArea_m2)],
      found: of('ζ', 'number', isOpen ? lossBlankedMouth(at.openFraction) : Infinity),
      model: null,
      source: 'general orifice form of Idelchik (from memory; its limits are tested)',
      check: 'blanked-mouth',
    },
    {
      what: 'Air through the duct, from the balance of mouth, hoses, vanes and leak',
      equation: 'Δp = R ṁ²/2ρ along each way; as much arrives as leaves',
      given: [of('recovery', 'share', geometry.recovery), of('through the vanes', 'flow', at.vane_kgps)],
      found: of('ṁ', 'flow', at.duct_kgps),
      model: null,
      source: 'conservation of mass; losses of Idelchik and of Rennels & Hudson',
      check: 'air-network',
    },
  ];
}

const inSeries = (a: number, b: number): number => (a > 0 && b > 0 ? (a * b) / (a + b) : 0);
