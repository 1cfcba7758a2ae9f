import { beforeEach, describe, expect, it } from 'vitest';
import { Playback } from '../../../web/state/playback.svelte.ts';

describe('playback', () => {
  let end_s: number;
  let frame: ((now_ms: number) => void) | null;
  let playback: Playback;

  /** Lets the screen draw its next frame at a time. */
  function draw(now_ms: number): void {
    const next = frame;
    frame = null;
    next?.(now_ms);
  }

  beforeEach(() => {
    [end_s, frame] = [100, null];
    playback = new Playback(
      () => end_s,
      (next) => {
        frame = next;
        return () => (frame = null);
      },
    );
    playback.speed = 20;
  });

  it('does not move by itself', () => {
    expect(frame).toBeNull();
    expect(playback.cursor_s).toBe(0);
  });

  it('moves the cursor by the time that passed, times the speed', () => {
    playback.play();
    draw(1000);
    draw(1050);
    expect(playback.cursor_s).toBeCloseTo(1);
    playback.speed = 60;
    draw(1100);
    expect(playback.cursor_s).toBeCloseTo(4);
  });

  it('stands still when paused and goes on from there', () => {
    playback.play();
    draw(0);
    draw(50);
    playback.pause();
    expect(frame).toBeNull();
    playback.play();
    draw(9000);
    expect(playback.cursor_s).toBeCloseTo(1);
  });

  it('does not leap after a tab was hidden', () => {
    playback.play();
    draw(0);
    draw(60_000);
    expect(playback.cursor_s).toBeCloseTo(2);
  });

  it('stops at the end and starts over from there', () => {
    playback.moveTo(99.5);
    playback.play();
    draw(0);
    draw(100);
    expect(playback.cursor_s).toBe(100);
    expect(playback.isPlaying).toBe(false);
    playback.play();
    expect(playback.cursor_s).toBe(0);
  });

  it('keeps its time when a longer stint comes in, and stays inside a shorter one', () => {
    playback.moveTo(80);
    end_s = 200;
    expect(playback.cursor_s).toBe(80);
    end_s = 50;
    expect(playback.cursor_s).toBe(50);
  });

  it('goes on playing across a new picture', () => {
    playback.play();
    draw(0);
    end_s = 120;
    draw(50);
    expect(playback.isPlaying).toBe(true);
    expect(playback.cursor_s).toBeCloseTo(1);
  });

  it('steps from mark to mark and stays beyond the last', () => {
    playback.step([0, 30, 60], 1);
    expect(playback.cursor_s).toBe(30);
    playback.step([0, 30, 60], -1);
    expect(playback.cursor_s).toBe(0);
    playback.step([0, 30, 60], -1);
    expect(playback.cursor_s).toBe(0);
  });
});
