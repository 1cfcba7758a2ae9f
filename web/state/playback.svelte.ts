/** A cursor over finished columns. Nothing moves unless a person started it, and a new picture does not move it. */
import { nextMark } from './moments.ts';

export const SPEEDS = [1, 5, 20, 60] as const;
export type Speed = (typeof SPEEDS)[number];

/** Asks for the next frame with its time in milliseconds; returns the way to call it off. */
export type Frames = (frame: (now_ms: number) => void) => () => void;

const browserFrames: Frames = (frame) => {
  const id = requestAnimationFrame(frame);
  return () => cancelAnimationFrame(id);
};

/** A frame never moves the cursor by more than this, so that a hidden tab does not jump on return [ms]. */
const LONGEST_FRAME_MS = 100;

export class Playback {
  #wanted_s = $state(0);
  #playing = $state(false);
  #speed = $state<Speed>(20);
  #end: () => number;
  #frames: Frames;
  #callOff: () => void = () => undefined;

  /** @param end - end of the stint now shown [s] */
  constructor(end: () => number, frames: Frames = browserFrames) {
    this.#end = end;
    this.#frames = frames;
  }

  get cursor_s(): number {
    return Math.min(this.#wanted_s, this.#end());
  }
  get isPlaying(): boolean {
    return this.#playing;
  }
  get speed(): Speed {
    return this.#speed;
  }
  set speed(speed: Speed) {
    this.#speed = speed;
  }

  moveTo(time_s: number): void {
    this.#wanted_s = Math.max(0, Math.min(time_s, this.#end()));
  }

  /** To the next or previous of some marks; stays where it is beyond the last. */
  step(marks_s: readonly number[], direction: 1 | -1): void {
    const mark = nextMark(marks_s, this.cursor_s, direction);
    if (mark !== null) this.moveTo(mark);
  }

  toggle(): void {
    if (this.#playing) this.pause();
    else this.play();
  }

  play(): void {
    if (this.#playing) return;
    if (this.cursor_s >= this.#end()) this.moveTo(0);
    this.#playing = true;
    this.#next(null);
  }

  pause(): void {
    this.#playing = false;
    this.#callOff();
  }

  #next(before_ms: number | null): void {
    this.#callOff = this.#frames((now_ms) => {
      if (!this.#playing) return;
      const passed_ms = before_ms === null ? 0 : Math.min(now_ms - before_ms, LONGEST_FRAME_MS);
      this.moveTo(this.cursor_s + (passed_ms / 1000) * this.#speed);
      if (this.cursor_s >= this.#end()) this.pause();
      else this.#next(now_ms);
    });
  }
}
