/** Latest wins: at most one run under way and one waiting, whatever the hand does. Knows no worker, only a door. */
import type { RunReply, RunRequest, Scenario } from '../../engine/index.ts';

/** Runs one request. Rejects when whoever stands behind it has died. */
export type Door = (request: RunRequest) => Promise<RunReply>;

/** A door that was opened, and the way to shut it for good. */
export interface OpenDoor {
  run: Door;
  close(): void;
}

export interface Listener {
  /** A reply that is newer than every reply before it, with what was asked. */
  replied(reply: RunReply, request: RunRequest): void;
  /** True while a request is under way or waiting. */
  busy(isBusy: boolean): void;
  /** The worker has died; what it was at is begun again. */
  restarted(): void;
}

/** Calls back after a while unless it is cancelled. */
export type Alarm = (after_ms: number, ring: () => void) => () => void;

export interface EngineClient {
  request(scenario: Scenario, driven?: Scenario | null): void;
  close(): void;
}

/** How often one request is repeated on a fresh worker before the page says that it failed. */
const LIVES = 2;
/** How long a first and a later run may take before the worker counts as dead [ms]. */
const PATIENCE_FIRST_MS = 20_000;
const PATIENCE_MS = 5_000;

export function engineClient(open: () => OpenDoor, listener: Listener, alarm: Alarm): EngineClient {
  let door: OpenDoor | null = null;
  let running: RunRequest | null = null;
  let waiting: RunRequest | null = null;
  let lastId = 0;
  let deaths = 0;
  let slowest_ms = PATIENCE_FIRST_MS;

  function start(next: RunRequest): void {
    running = next;
    listener.busy(true);
    const used = (door ??= open());
    const cancelAlarm = alarm(slowest_ms, () => died(used, 'it gave no answer'));
    used.run(next).then(
      (reply) => {
        cancelAlarm();
        if (used === door && reply.id === running?.id) answered(reply, next);
      },
      (cause: unknown) => {
        cancelAlarm();
        died(used, cause instanceof Error ? cause.message : String(cause));
      },
    );
  }

  function answered(reply: RunReply, asked: RunRequest): void {
    deaths = 0;
    const took_ms = reply.kind === 'result' ? reply.elapsed_ms : 0;
    slowest_ms = Math.max(PATIENCE_MS, 20 * took_ms);
    // A picture on the way to the newest one is drawn; a complaint about a value already left behind is not.
    if (reply.kind === 'result' || !waiting) listener.replied(reply, asked);
    goOn();
  }

  function died(used: OpenDoor, cause: string): void {
    if (used !== door) return;
    used.close();
    door = null;
    slowest_ms = PATIENCE_FIRST_MS;
    deaths += 1;
    const asked = waiting ?? running;
    waiting = null;
    if (asked && deaths <= LIVES) {
      listener.restarted();
      return start(asked);
    }
    deaths = 0;
    if (asked)
      listener.replied({ id: asked.id, kind: 'failure', message: `the worker stopped: ${cause}` }, asked);
    goOn();
  }

  function goOn(): void {
    running = null;
    const next = waiting;
    waiting = null;
    if (next) start(next);
    else listener.busy(false);
  }

  return {
    request(scenario, driven = null) {
      const next = { id: ++lastId, scenario, driven };
      if (running) waiting = next;
      else start(next);
    },
    close() {
      door?.close();
      door = null;
      running = waiting = null;
    },
  };
}
