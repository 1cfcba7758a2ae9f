/** What the stint chart shows beyond the run itself: pinned runs, and the fan of what may come. Loaded when there is any. */
import type { Axle, CornerResult, CornerSensitivity, CornerSpread, SafeSpan } from '../../../engine/index.ts';
import { drawDrawn, drawFan } from '../../charts/draw-fan.ts';
import { fanView, type FanView } from '../../charts/fan-view.ts';
import type { Layer, PinnedRun, StintView } from '../../charts/stint-view.ts';
import { textWidth } from '../../charts/text-width.ts';
import { cornerInView } from '../../display/corner.ts';
import type { FoundSpread } from '../../display/doubt-words.ts';
import { measureFirstNote } from '../../display/measure-words.ts';
import { pinnedNames } from '../../display/pinned-name.ts';
import { spanNote } from '../../display/span-note.ts';
import { spanOf } from '../../display/span-words.ts';
import type { Side } from '../../state/sides.ts';
import type { Run } from '../../state/session.svelte.ts';
import type { PinnedStint } from '../../state/pins.svelte.ts';

/** What stands beside the lines' right ends has this much room [px] */
const END_PX = 84;

/** The pinned runs of one corner, but what is shown itself. */
export function pinnedRuns(
  pins: readonly PinnedStint[],
  now: Run,
  axle: Axle,
  side: Side | null,
): PinnedRun[] {
  const names = pinnedNames(
    pins.map(({ scenario }) => scenario),
    now.scenario,
    axle,
  );
  return pins.flatMap(({ scenario, result, dash }, i) => {
    const corner = cornerInView(result, axle, side);
    if (!corner || scenario === now.scenario) return [];
    return [{ label: endName(names[i] ?? '', END_PX), dash, corner, laps: result.laps }];
  });
}

/** A name as far as there is room for it. */
export function endName(name: string, room_px: number): string {
  const bare = name.replace(/^pinned (at )?/, '');
  const whole = [name, bare].find((text) => textWidth(text) <= room_px);
  if (whole !== undefined) return whole;
  let length = bare.length;
  while (length > 1 && textWidth(`${bare.slice(0, length)}\u2026`) > room_px) length--;
  return `${bare.slice(0, length).trimEnd()}\u2026`;
}

/**
 * Under the chart's title: why the span ends where it does, and what to measure first. A span of a part of the stint takes
 * the two lines that there are; what to measure is told with the doubt.
 */
export const noteOf = (
  corner: CornerResult,
  spans: readonly SafeSpan[] | null,
  spread: FoundSpread,
  sensitivity: readonly CornerSensitivity[] | string | null,
): string => {
  const span = spans && spanOf(spans, corner);
  if (span?.before && !span.isIdle) return spanNote(span);
  return [span ? spanNote(span) : '', measureFirstNote(sensitivity, corner, spread)].join(' ');
};

/** The spread of one corner; null while there is none, or where nothing is in doubt. */
export function spreadOf(found: FoundSpread, at: CornerResult): CornerSpread | null {
  if (found === null || typeof found === 'string' || found.unknowns === 0) return null;
  return found.corners.find(({ axle, side }) => axle === at.axle && side === at.side) ?? null;
}

/** The fan under the run's lines, and the one draw that is looked at over them. */
export function fanLayer(found: FoundSpread, at: CornerResult, draw: number | null): Layer | null {
  const spread = spreadOf(found, at);
  if (!spread) return null;
  let last: { view: StintView; fan: FanView } | null = null;
  const fanIn = (view: StintView): FanView => {
    if (last?.view !== view) last = { view, fan: fanView(spread, view, draw) };
    return last.fan;
  };
  return {
    note: `Shaded: spread of ${spread.stints.length} runs.`,
    under: (context, view, theme) => drawFan(context, fanIn(view), theme),
    over: (context, view, theme) => drawDrawn(context, fanIn(view), theme),
    end(view) {
      const top = fanIn(view).peak.high.at(-1);
      return top ? { text: 'middle 80\u00a0%', y: top.y } : null;
    },
  };
}
