/** Laps and phases of a stint on one clock. */
import type { StintModel } from './compile.ts';
import type { Lap, PhaseSpan } from './result.ts';

/** The driven laps; `counted` is the front axle's. */
export function lapsOf({ passages }: StintModel): Lap[] {
  const laps: Lap[] = [];
  const legs = [...new Set(passages.map(({ leg }) => leg))];
  let start_s = 0;
  let sample = 0;
  for (const passage of passages) {
    const end_s = start_s + (passage.plan.end_s.at(-1) ?? 0);
    const lastSample = sample + passage.plan.steps;
    if (passage.kind !== 'stand') {
      const { lap, kind, counted, day } = passage;
      const { wet, ambient_K } = day;
      laps.push({
        lap,
        kind,
        phase: legs.indexOf(passage.leg),
        counted: counted[0]!,
        wet,
        ambient_K,
        start_s,
        end_s,
        firstSample: sample,
        lastSample,
      });
    }
    start_s = end_s;
    sample = lastSample;
  }
  return laps;
}

/** Runs of laps under one heading, one a phase of the scenario that has laps. */
export function phasesOf({ passages, notes }: StintModel): PhaseSpan[] {
  const phases: PhaseSpan[] = [];
  let start_s = 0;
  for (const passage of passages) {
    const end_s = start_s + (passage.plan.end_s.at(-1) ?? 0);
    const last = phases.at(-1);
    if (last?.index === passage.leg && last.laps && passage.kind !== 'stand') {
      last.end_s = end_s;
      last.laps[1] = passage.lap;
    } else {
      const laps: [number, number] | null = passage.kind === 'stand' ? null : [passage.lap, passage.lap];
      const brakeHeld = passage.kind === 'stand' && passage.held;
      const note = notes[passage.leg]!;
      phases.push({ kind: passage.kind, index: passage.leg, laps, start_s, end_s, brakeHeld, ...note });
    }
    start_s = end_s;
  }
  return phases;
}
