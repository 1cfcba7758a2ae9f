/** The main numbers of a stint followed by hand. */
import { unknownsOf } from '../advise/unknowns.ts';
import { byHand } from '../report/by-hand/by-hand.ts';
import { compile } from '../stint/compile.ts';
import { run } from '../stint/run.ts';
import type { ByHandReply, HandRequest } from './protocol.ts';

export function followByHand({ scenario, driven }: HandRequest): ByHandReply {
  const model = compile(scenario, { driven });
  const result = run(model);
  const corners = result.corners.map(({ axle, side, ranges }, i) => ({
    axle,
    side,
    ranges,
    byHand: byHand(model, result, i),
  }));
  return { kind: 'by hand', corners, judged: unknownsOf(scenario).length };
}
