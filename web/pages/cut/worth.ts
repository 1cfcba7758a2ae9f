/** What a point of blanking is worth at a panel: two stints, a little more open and a little more closed. */
import type { Axle, RunReply, RunRequest, Scenario } from '../../../engine/index.ts';
import { withChanges } from '../../../engine/scenario/changes.ts';
import { cornerOf } from '../../display/corner.ts';
import { blankingKey, equalised } from '../../state/sides.ts';

/** Far enough that rounding of a run is nothing beside it, near enough to be a slope [percentage points] */
const STEP_PCT = 2;

type Run = (request: RunRequest) => Promise<RunReply>;

/** Peak of the face for a point more [K], both sides of the axle alike; null where a stint could not be run. */
export async function perPoint_K(
  run: Run,
  scenario: Scenario,
  axle: Axle,
  blanking_pct: number,
): Promise<number | null> {
  const ends = [Math.max(0, blanking_pct - STEP_PCT), Math.min(100, blanking_pct + STEP_PCT)] as const;
  const peaks: number[] = [];
  for (const [id, pct] of ends.entries()) {
    const at = withChanges(equalised(scenario, axle), { [blankingKey(axle, null)]: pct });
    const reply = await run({ id, scenario: at, driven: null });
    const corner = reply.kind === 'result' ? cornerOf(reply.result, axle) : undefined;
    if (!corner) return null;
    peaks.push(corner.facePeak_K);
  }
  const [open = 0, closed = 0] = peaks;
  return (closed - open) / (ends[1] - ends[0]);
}
