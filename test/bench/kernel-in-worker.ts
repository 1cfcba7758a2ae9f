/** The kernel in a worker of the browser: told how many turns, it answers what one took [ms]. */
import { compile } from '../../engine/stint/compile.ts';
import { kernelOf, turn_ms } from './kernel-loop.ts';
import { referenceStint } from './reference-stint.ts';

const WARMING = 50;

const drive = kernelOf(compile(referenceStint()));
turn_ms(drive, WARMING);
self.onmessage = ({ data }: MessageEvent<number>) => self.postMessage(turn_ms(drive, data));
