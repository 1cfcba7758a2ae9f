/** What a thread of a batch does: from the line of a job to the line of its result. */
import { isTree } from '../scenario/tree.ts';
import { problem } from '../scenario/problem.ts';
import { jobFrom } from './job.ts';
import { messageOf, Refused } from './refused.ts';
import { notRun, ranLine, refusedLine, type ResultLine } from './result-line.ts';
import { recordOf } from './stint-job.ts';

/** Never throws: whatever happens is a result. */
export default function resultOf(line: string): ResultLine {
  let asked: unknown;
  try {
    asked = parsed(line);
    const job = jobFrom(asked);
    return ranLine(job.id, recordOf(job));
  } catch (error) {
    const id = isTree(asked) ? asked['id'] : undefined;
    return refusedLine(id, error instanceof Refused ? error.problems : [notRun(messageOf(error))]);
  }
}

function parsed(line: string): unknown {
  if (line.trim() === '') throw new Refused([problem('line', '', 'a JSON object', 'the line is empty')]);
  try {
    return JSON.parse(line) as unknown;
  } catch (error) {
    throw new Refused([problem('line', line, 'a JSON object', messageOf(error))]);
  }
}
