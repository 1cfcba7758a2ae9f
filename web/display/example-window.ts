import type { Scenario } from '../../engine/index.ts';

/** Whether nobody said where a window comes from: such a sheet is not for use on a car. */
export const isExampleWindow = ({ brakes: { front, rear } }: Scenario): boolean =>
  [front, rear].some(({ window }) => /^\s*(example\b.*)?$/i.test(window.source));

export const EXAMPLE_WORDS = 'example, replace. Not for use on a car';
