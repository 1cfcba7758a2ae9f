/** The hottest stop of a corner by hand: from the car's speeds to what face and cheek gain. */
import { effusivity } from '../../car/partition.ts';
import { heatToDisc } from '../../disc/heat-split.ts';
import { materials } from '../../disc/materials.ts';
import { valueAtTemperature } from '../../disc/materials/material.ts';
import type { Scenario } from '../../scenario/schema.ts';
import type { CornerModel } from '../../stint/compile.ts';
import type { LapPassage } from '../../stint/passages.ts';
import type { Stop } from '../../stint/result.ts';
import { celsius, kelvin } from '../../units.ts';
import { of, type HandLine } from './hand-line.ts';
import { slabPeak } from './slab.ts';

/** Peak of a thick body's face under a flux that falls evenly to nothing, 4/(3√(2π)) [-] */
const PEAK_OF_FALLING_FLUX = 4 / (3 * Math.sqrt(2 * Math.PI));

export interface HandStop {
  passage: LapPassage;
  plan: LapPassage['plan']['stops'][number];
  stop: Stop;
  /** What the cheek's mean rises by from brake on to brake off [K] */
  bulkRise_K: number;
}

/** To the whole degree that is read, so that what is printed adds up. */
const toDegree = (temperature_K: number): number => kelvin(Math.round(celsius(temperature_K)));

export function stopByHand(corner: CornerModel, { car, correction }: Scenario, at: HandStop): HandLine[] {
  const { passage, plan, stop } = at;
  const { disc, pad } = corner.spec;
  const axle = passage.plan.axles[corner.corner.axle];
  let all_J = 0;
  let on_s = 0;
  for (let n = plan.fromStep; n < plan.toStep; n++) {
    all_J += axle.dt_s[n]! * axle.power_W[n]!;
    on_s += axle.dt_s[n]!;
  }
  all_J *= passage.massRatio;
  const mass_kg = passage.plan.mass_kg * passage.massRatio;
  const kinetic_J = (car.rotational_factor * mass_kg * (plan.from_mps ** 2 - plan.to_mps ** 2)) / 2;
  const share = corner.shares[passage.leg]!;
  const own_J = share * all_J;
  const discShare = pad.discShare ?? heatToDisc(corner.spec);
  const material = materials[disc.material];
  const mean_K = (stop.startFace_K + stop.peakFace_K) / 2;
  const property = (values: readonly number[], T: number): number => valueAtTemperature(material, values, T);
  const c_cheek = property(material.heatCapacity, stop.startFace_K + at.bulkRise_K / 2);
  const k = property(material.conductivity, mean_K);
  const ξ = effusivity(k, material.density_kgpm3, property(material.heatCapacity, mean_K));
  const flux = (2 * discShare * own_J) / (disc.swept_m2 * on_s);
  const thick_K = (PEAK_OF_FALLING_FLUX * flux * Math.sqrt(on_s)) / ξ;
  const Fo = ((k / ξ) ** 2 * on_s) / disc.cheek_m ** 2;
  const scale_K = (flux * disc.cheek_m) / k;
  const thin_K = scale_K * slabPeak(Fo);
  const [before_K, peak_K] = [toDegree(stop.startFace_K), toDegree(stop.peakFace_K)];
  const rise = of('face', 'difference', peak_K - before_K);
  const factor = correction.heat.factor;
  return [
    {
      what: 'Kinetic energy the car gives up',
      equation: 'E = ½ κ m (V₁² − V₂²)',
      given: [
        of('κ', 'number', car.rotational_factor, 'mass, with what turns, over mass'),
        of('m', 'mass', mass_kg),
        of('V₁', 'speed', plan.from_mps),
        of('V₂', 'speed', plan.to_mps),
      ],
      found: of('E', 'energy', kinetic_J),
      model: null,
      source: 'kinetic energy of mass and turning wheels',
      check: 'stop-energy',
    },
    {
      what: 'Of it, heat of all four brakes; drag, rolling, slope, engine and slipping tyres take the rest',
      equation: 'Q = Σ P Δt over the stop',
      given: [of('E − Q', 'energy', kinetic_J - all_J), of('t', 'time', on_s)],
      found: of('Q', 'energy', all_J),
      model: null,
      source: 'balance of forces along the way; Limpert, Brake Design and Safety, ch. 3 (from memory)',
      check: 'stop-energy',
    },
    {
      what: 'Of it, heat of this brake',
      equation: factor === 1 ? 'Q₁ = s Q' : 'Q₁ = F s Q',
      given: [
        of('s', 'share', share / factor, 'half of the axle’s share'),
        ...(factor === 1 ? [] : [of('F', 'number', factor, 'the scenario’s heat correction')]),
      ],
      found: of('Q₁', 'energy', own_J),
      model: null,
      source: 'brake balance of the scenario',
      check: null,
    },
    {
      what: 'Mean rise of the disc, if none were lost meanwhile',
      equation: 'ΔT = γ Q₁ / (m c)',
      given: [
        of('γ', 'share', discShare, 'share made on the disc'),
        of('m', 'mass', disc.ringMass_kg),
        of('c', 'heat capacity', c_cheek, 'at the rise’s middle'),
      ],
      found: of('ΔT', 'difference', (discShare * own_J) / (disc.ringMass_kg * c_cheek)),
      model: of('cheek', 'difference', at.bulkRise_K),
      source: 'energy balance; what is lost in the stop makes the model’s about a tenth lower',
      check: 'repeated-stops',
    },
    {
      what: 'Flash of the face, if the flux fell evenly and the cheek were thick',
      equation: 'ΔT = 4/(3√(2π)) q₀ √t / ξ,  q₀ = 2 γ Q₁/(S t)',
      given: [
        of('q₀', 'flux', flux, 'flux as the brake goes on'),
        of('S', 'area', disc.swept_m2, 'rubbed, both faces'),
        of('t', 'time', on_s),
        of('ξ', 'effusivity', ξ, 'effusivity √(k ρ c) between both temperatures'),
      ],
      found: of('ΔT', 'difference', thick_K),
      model: rise,
      source: 'Carslaw & Jaeger 1959, 2.9; the model’s cheek is thin and its flux as driven',
      check: 'semi-infinite-stop',
    },
    {
      what: 'The same in a cheek as thin as it is, closed at the vanes: the rise of its bulk is in it',
      equation: 'ΔT = p(Fo) q₀ L / k,  Fo = α t / L²',
      given: [
        of('Fo', 'number', Fo, 'how deep the heat gets in the stop'),
        of('α', 'diffusivity', (k / ξ) ** 2, 'diffusivity'),
        of('p', 'number', thin_K / scale_K, 'peak of the exact series at that Fo'),
        of('L', 'length', disc.cheek_m, 'one cheek'),
        of('k', 'conductivity', k),
      ],
      found: of('ΔT', 'difference', thin_K),
      model: rise,
      source: 'Carslaw & Jaeger 1959, 3.8, with the falling flux by Duhamel’s theorem',
      check: 'slab-falling-flux',
    },
    {
      what: 'The face at its peak: what it had as the brake went on, and the flash of the thin cheek',
      equation: 'T = T₁ + ΔT',
      given: [of('T₁', 'temperature', before_K, 'face as the brake goes on'), of('ΔT', 'difference', thin_K)],
      found: of('T', 'temperature', before_K + thin_K),
      model: null,
      source:
        'sum; T₁ is the model’s, all laps before are in it; above the model’s T, whose vanes store heat and which loses some in the stop',
      check: 'cheek-peak',
    },
    {
      what: 'The same by the model: the number on the page',
      equation: 'T = T₁ + ΔT',
      given: [
        of('T₁', 'temperature', before_K),
        of('ΔT', 'difference', peak_K - before_K, 'the model’s rise'),
      ],
      found: of('T', 'temperature', peak_K),
      model: null,
      source: 'the run shown; to the whole degree',
      check: 'whole-stint',
    },
  ];
}
