/** Node 20 gives a new thread no compiler for TypeScript: the thread asks for its own, then loads what it does. */
import { register } from 'tsx/esm/api';

register();
export default (await import('./batch-thread.ts')).default;
