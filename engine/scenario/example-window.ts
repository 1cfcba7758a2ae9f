import type { Scenario } from './schema.ts';

/** Whether nobody said where a window comes from: what follows from it is not for use on a car. */
export const isExampleWindow = ({ brakes: { front, rear } }: Pick<Scenario, 'brakes'>): boolean =>
  [front, rear].some(({ window }) => /^\s*(example\b.*)?$/i.test(window.source));
