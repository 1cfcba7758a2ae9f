/** Reads a file in a worker of its own: the latest choices win, a dead worker is replaced once. Knows only a door. */
import type { TraceChoices, TraceReading } from '../../engine/index.ts';
import type { Alarm } from './engine-client.ts';

export interface TraceDoor {
  /** Rejects when whoever stands behind it has died. */
  readTrace(file: Blob, choices: TraceChoices, progress: (share: number) => void): Promise<TraceReading>;
  close(): void;
}

export type Outcome =
  { kind: 'read'; reading: TraceReading } | { kind: 'dead'; cause: string } | { kind: 'stopped' };

export interface TraceClient {
  /** Stops a read under way and starts this one. */
  read(file: Blob, choices: TraceChoices, progress: (share: number) => void): Promise<Outcome>;
  /** Ends a read under way, and its worker with it. */
  stop(): void;
  /** The worker goes too: nothing of the file stays. */
  close(): void;
}

/** How often one file is read before the page says that it failed. */
const LIVES = 2;
/** How long a worker may show no progress before it counts as dead: while it starts, and later [ms]. */
const PATIENCE_FIRST_MS = 20_000;
const PATIENCE_MS = 10_000;

export function traceClient(open: () => TraceDoor, alarm: Alarm): TraceClient {
  let door: TraceDoor | null = null;
  let end: ((outcome: Outcome) => void) | null = null;
  let latest = 0;

  function once(file: Blob, choices: TraceChoices, progress: (share: number) => void): Promise<Outcome> {
    return new Promise((resolve) => {
      let cancelAlarm: () => void = () => undefined;
      const finish = (outcome: Outcome): void => {
        if (end !== finish) return;
        cancelAlarm();
        end = null;
        resolve(outcome);
      };
      const died = (cause: unknown): void =>
        finish({ kind: 'dead', cause: cause instanceof Error ? cause.message : String(cause) });
      const wait = (patience_ms: number): void => {
        cancelAlarm();
        cancelAlarm = alarm(patience_ms, () => died('it gave no sign of life'));
      };
      const progressed = (share: number): void => {
        if (end !== finish) return;
        wait(PATIENCE_MS);
        progress(share);
      };
      const asked = async (): Promise<TraceReading> => (door ??= open()).readTrace(file, choices, progressed);
      end = finish;
      wait(PATIENCE_FIRST_MS);
      asked().then((reading) => finish({ kind: 'read', reading }), died);
    });
  }

  function shut(): void {
    door?.close();
    door = null;
  }

  /** A worker in the middle of a file answers nothing else: it is ended, not asked to stop. */
  function stop(): void {
    latest += 1;
    if (!end) return;
    shut();
    end({ kind: 'stopped' });
  }

  return {
    async read(file, choices, progress) {
      stop();
      const mine = ++latest;
      for (let life = 1; ; life++) {
        const outcome = await once(file, choices, progress);
        if (outcome.kind !== 'dead') return outcome;
        if (mine !== latest) return { kind: 'stopped' };
        shut();
        if (life === LIVES) return outcome;
      }
    },
    stop,
    close() {
      stop();
      shut();
    },
  };
}
