/** Takes today's numbers as the ones to hold: `npm run regression:accept`, then read the diff. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { watchedNow } from './numbers.ts';

writeFileSync(join(import.meta.dirname, 'accepted.json'), `${JSON.stringify(watchedNow(), null, 2)}\n`);
