/** What no single field can tell: values that must agree with each other. */
import * as v from 'valibot';
import { blankingProblems } from './blank-rules.ts';
import { brakeSchema } from './brake-schema.ts';
import { doubtProblems, endProblems } from './doubt-rules.ts';
import { isLeaf, misfit } from './keys.ts';
import { mouthProblems } from './mouth-rules.ts';
import { layOver } from './tree.ts';
import { problem, type Problem } from './problem.ts';
import type { Brake, Scenario } from './schema.ts';
import { vaneProblems } from './vane-rules.ts';

/** All disagreements between fields; parts of the scenario that have a field out of range are left alone. */
export function checkTogether(scenario: Scenario, broken: ReadonlySet<string>): Problem[] {
  const rules: [part: keyof Scenario & string, find: () => Problem[]][] = [
    [
      'brakes',
      () =>
        (['front', 'rear'] as const).flatMap((axle) =>
          brakeProblems(`brakes.${axle}`, scenario.brakes[axle]),
        ),
    ],
    ['sides', () => sideProblems(scenario)],
    ['traffic', () => gapProblems('traffic', scenario.traffic)],
    ['stint', () => phaseProblems(scenario)],
    ['trace', () => traceProblems(scenario)],
    ['doubt', () => doubtProblems(scenario)],
  ];
  const found = rules.flatMap(([part, find]) => (broken.has(part) ? [] : find()));
  // a mouth is asked what can be made of it only where it is one
  if (found.length === 0 && broken.size === 0) found.push(...blankingProblems(scenario));
  return found.length > 0 || broken.size > 0 ? found : endProblems(scenario, rulesAt);
}

/** What a value at a key may run into where every field is in its own range; null: nothing asks more of it. */
function rulesAt(key: string): ((scenario: Scenario) => Problem[]) | null {
  if (key.startsWith('trace.')) return traceProblems;
  if (key.startsWith('stint.')) return phaseProblems;
  const [, axle] =
    /^(?:brakes|sides)\.(front|rear)\w*\.(?:disc\.|pad\.|fluid\.|window\.|duct\.(?:mouth|blank|strip)_)/.exec(
      key,
    ) ?? [];
  if (axle !== 'front' && axle !== 'rear') return null;
  return ({ brakes, sides }) => {
    const ofSides = (['left', 'right'] as const).flatMap((side) => {
      const own = sides[`${axle}_${side}`];
      return own ? brakeProblems(`sides.${axle}_${side}`, layOver(brakes[axle], own) as Brake) : [];
    });
    return [...brakeProblems(`brakes.${axle}`, brakes[axle]), ...ofSides];
  };
}

/** A side's own values laid over its axle's must make a whole brake. */
function sideProblems({ brakes, sides }: Scenario): Problem[] {
  const given = Object.entries(sides).filter(([, own]) => own !== undefined);
  return given.flatMap(([side, own]) => {
    const axle = side.startsWith('front') ? 'front' : 'rear';
    const checked = v.safeParse(brakeSchema, layOver(brakes[axle], own));
    if (checked.success) return brakeProblems(`sides.${side}`, checked.output);
    return checked.issues.map((issue) => {
      const path = (issue.path ?? []).map((part) => String(part.key)).join('.');
      return problem(`sides.${side}.${path}`, issue.input, issue.message);
    });
  });
}

function brakeProblems(key: string, { disc, pad, fluid, window, duct }: Brake): Problem[] {
  const found: Problem[] = [];
  if (disc.inner_mm >= disc.outer_mm)
    found.push(problem(`${key}.disc.inner_mm`, disc.inner_mm, `less than outer_mm, ${disc.outer_mm}`));
  const filled = 2 * disc.cheek_mm + disc.gap_mm;
  if (Math.abs(filled - disc.thickness_mm) > 0.6) {
    found.push(
      problem(`${key}.disc.thickness_mm`, disc.thickness_mm, `two cheeks and the gap, ${filled.toFixed(1)}`),
    );
  }
  const open = disc.kind === 'vented';
  if (open !== disc.gap_mm > 0)
    found.push(
      problem(`${key}.disc.gap_mm`, disc.gap_mm, open ? 'above 0 for a vented disc' : '0 for a solid disc'),
    );
  found.push(...vaneProblems(key, disc));
  if (window.bite_C >= window.face_peak_C)
    found.push(
      problem(`${key}.window.bite_C`, window.bite_C, `less than face_peak_C, ${window.face_peak_C}`),
    );
  found.push(...frictionProblems(`${key}.pad.friction`, pad.friction));
  found.push(...mouthProblems(`${key}.duct`, duct));
  if (fluid.wet_boiling_C > fluid.dry_boiling_C) {
    found.push(
      problem(
        `${key}.fluid.wet_boiling_C`,
        fluid.wet_boiling_C,
        `at most dry_boiling_C, ${fluid.dry_boiling_C}`,
      ),
    );
  }
  return found;
}

/** Friction is read between its points, so these go up in temperature; the first that does not is told. */
function frictionProblems(key: string, friction: Brake['pad']['friction']): Problem[] {
  const wrong = friction.findIndex((point, i) => i > 0 && point.face_C <= friction[i - 1]!.face_C);
  if (wrong < 0) return [];
  const before = friction[wrong - 1]!.face_C;
  const { face_C } = friction[wrong]!;
  return [problem(`${key}.${wrong}.face_C`, face_C, `more than that of the point before it, ${before}`)];
}

function gapProblems(
  key: string,
  gap: { gap_m?: number | null | undefined; gap_s?: number | null | undefined },
): Problem[] {
  const both = typeof gap.gap_m === 'number' && typeof gap.gap_s === 'number';
  return both
    ? [problem(`${key}.gap_s`, gap.gap_s, 'none, because gap_m is given; a gap is in metres or in seconds')]
    : [];
}

/** Keys that a phase may change from there on. */
const PHASE_KEYS = /^(conditions|blanking_pct|driver)\.|^car\.(brake_balance_front|fuel_kg)$/;

const NOT_FOR_PHASES = 'a key of conditions, blanking_pct or driver, car.brake_balance_front or car.fuel_kg';

function phaseProblems({ stint }: Scenario): Problem[] {
  const found: Problem[] = [];
  const open = stint.phases.filter((phase) => phase.kind !== 'stand' && phase.laps === null);
  if (open.length > 1)
    found.push(problem('stint.phases', open.length, 'at most one phase whose laps are none'));
  const fixed = stint.phases.reduce(
    (sum, phase) => sum + (phase.kind === 'stand' ? 0 : (phase.laps ?? 0)),
    0,
  );
  if (stint.laps < fixed || (open.length === 0 && stint.laps !== fixed)) {
    const range =
      open.length === 0 ? `${fixed}, the laps of all phases` : `at least ${fixed}, the laps of its phases`;
    found.push(problem('stint.laps', stint.laps, range));
  }
  stint.phases.forEach((phase, i) => {
    const key = `stint.phases.${i}`;
    if (phase.kind !== 'stand') found.push(...gapProblems(key, phase));
    for (const [name, value] of Object.entries(phase.set ?? {})) {
      const expected = PHASE_KEYS.test(name) && isLeaf(name) ? misfit(name, value) : NOT_FOR_PHASES;
      if (expected) found.push(problem(`${key}.set.${name}`, value, expected));
    }
  });
  return found;
}

function traceProblems({ trace }: Scenario): Problem[] {
  if (!trace) return [];
  const found: Problem[] = [];
  const n = trace.speed_kmh.length;
  for (const name of ['distance_m', 'time_s'] as const) {
    const column = trace[name];
    if (column.length !== n)
      found.push(problem(`trace.${name}`, column.length, `as many values as speed_kmh, ${n}`));
    const back = column.findIndex((value, i) => i > 0 && !(value > (column[i - 1] ?? Infinity)));
    if (name === 'time_s' && back > 0)
      found.push(problem(`trace.time_s.${back}`, column[back], 'more than the value before it'));
    const behind = column.findIndex((value, i) => i > 0 && !(value >= (column[i - 1] ?? Infinity)));
    if (name === 'distance_m' && behind > 0)
      found.push(problem(`trace.distance_m.${behind}`, column[behind], 'at least the value before it'));
  }
  for (const name of ['slope_pct', 'height_m', 'accel_g', 'brake_front_bar', 'brake_rear_bar'] as const) {
    const found_n = trace[name]?.length ?? n;
    if (found_n !== n) found.push(problem(`trace.${name}`, found_n, `as many values as speed_kmh, ${n}`));
  }
  const wrong = trace.speed_kmh.findIndex((speed) => !(speed >= 0 && speed <= 400));
  if (wrong >= 0) found.push(problem(`trace.speed_kmh.${wrong}`, trace.speed_kmh[wrong], '0 to 400'));
  return found;
}
