/** The kernel in a Node process of its own: told how many turns, it answers what one took [ms]. */
import { compile } from '../../engine/stint/compile.ts';
import { kernelOf, turn_ms } from './kernel-loop.ts';
import { referenceStint } from './reference-stint.ts';

const WARMING = 50;

const drive = kernelOf(compile(referenceStint()));
turn_ms(drive, WARMING);
process.on('message', (turns: number) => process.send!(turn_ms(drive, turns)));
