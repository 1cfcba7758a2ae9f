/** What broke, as a value: an Error would lose its fields at the worker's door. */
import type { Failure } from './protocol.ts';

export const failureOf = (error: unknown): Failure => ({
  kind: 'failure',
  message: error instanceof Error ? error.message : String(error),
});
