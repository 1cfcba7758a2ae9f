import type { TraceChoices, TraceReading, UnderstoodTrace } from '../../engine/index.ts';
import type { Alarm } from '../../web/state/engine-client.ts';
import type { Correction, Memory } from '../../web/state/remembered.ts';
import type { TraceDoor } from '../../web/state/trace-client.ts';

/** A reading that tells what it was read with. */
export function readingOf(choices: TraceChoices = {}, fingerprint = 'header'): TraceReading {
  const understood: UnderstoodTrace = {
    delimiter: choices.delimiter ?? ',',
    decimal: choices.decimal ?? '.',
    columns: [],
    firstRows: [],
    rows: 240,
    duration_s: 24,
    lapsBy: choices.lapsBy ?? 'none',
    laps: [],
    lap: choices.lap ?? null,
    meanInterval_s: 0.1,
    mended: [],
    question: null,
    fingerprint,
  };
  return { problems: [], understood, columns: { speed_mps: new Float64Array(240) } };
}

export interface Asked {
  choices: TraceChoices;
  worker: number;
  progress(share: number): void;
  answer(reading?: TraceReading): void;
  die(): void;
}

/** A door whose worker answers when the test says so. */
export function fakeDoor() {
  const asked: Asked[] = [];
  const closed: number[] = [];
  const alarms = new Map<number, () => void>();
  let opened = 0;
  let lastAlarm = 0;

  const open = (): TraceDoor => {
    const worker = opened++;
    return {
      readTrace: (_file, choices, progress) =>
        new Promise((resolve, reject) => {
          asked.push({
            choices,
            worker,
            progress,
            answer: (reading = readingOf(choices)) => resolve(reading),
            die: () => reject(new Error('out of memory')),
          });
        }),
      close: () => void closed.push(worker),
    };
  };
  const alarm: Alarm = (_after_ms, ring) => {
    const id = ++lastAlarm;
    alarms.set(id, ring);
    return () => void alarms.delete(id);
  };

  return {
    open,
    alarm,
    asked,
    closed,
    alarms,
    /** The last thing asked, once it was. */
    last: () => asked.at(-1)!,
    /** So long that every alarm that is set goes off. */
    waitLong: () => [...alarms.values()].forEach((ring) => ring()),
  };
}

/** A memory in a map that can be made to refuse. */
export function fakeMemory(isDenied = false) {
  const kept = new Map<string, Correction>();
  const tried = <T>(act: () => T): Promise<T> =>
    isDenied ? Promise.reject(new Error('denied')) : Promise.resolve(act());
  const memory: Memory = {
    recall: (fingerprint) => tried(() => kept.get(fingerprint) ?? null),
    keep: (fingerprint, correction) => tried(() => void kept.set(fingerprint, correction)),
    forget: (fingerprint) => tried(() => void kept.delete(fingerprint)),
  };
  return { memory, kept };
}

/** All promises that are ready have run. */
export const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
